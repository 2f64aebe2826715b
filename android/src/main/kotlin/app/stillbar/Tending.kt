package app.stillbar

import android.app.job.JobInfo
import android.app.job.JobParameters
import android.app.job.JobScheduler
import android.app.job.JobService
import android.content.ComponentName
import android.content.Context

/** When there is signal and the battery is not low, the system wakes this, and the core is told that now is a good time. */
class Tending : JobService() {
    @Volatile private var stopped = false

    override fun onStartJob(params: JobParameters): Boolean {
        val app = application as StillbarApp
        app.work {
            val more = app.field().getOrNull()?.tend() ?: false
            if (!stopped) jobFinished(params, more)
        }
        return true
    }

    override fun onStopJob(params: JobParameters): Boolean {
        stopped = true
        return true
    }

    companion object {
        private const val JOB = 1

        fun ask(context: Context) {
            val job = JobInfo.Builder(JOB, ComponentName(context, Tending::class.java))
                .setRequiredNetworkType(JobInfo.NETWORK_TYPE_ANY)
                .setRequiresBatteryNotLow(true)
                .setBackoffCriteria(JobInfo.DEFAULT_INITIAL_BACKOFF_MILLIS, JobInfo.BACKOFF_POLICY_EXPONENTIAL)
                .build()
            context.getSystemService(JobScheduler::class.java).schedule(job)
        }
    }
}
