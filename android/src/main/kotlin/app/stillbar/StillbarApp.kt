package app.stillbar

import android.app.Application
import android.content.Context
import android.content.res.Configuration
import android.os.Build
import app.stillbar.core.Errand
import app.stillbar.core.Field
import app.stillbar.core.OpenException
import app.stillbar.core.Platform
import java.util.concurrent.Executors
import java.util.concurrent.Future

/** What outlives a turn of the phone: the core, the one thread that calls it, and an errand under way. */
class StillbarApp : Application() {
    /** Every call of the core runs here, one after the other, so that no screen waits for the disk. */
    private val worker = Executors.newSingleThreadExecutor()

    /** The camera's errand that is under way. */
    @Volatile var pending: Errand? = null

    /** Gives the camera; the tests give another. */
    var eyes: (Context) -> Eyes = ::PhoneEyes

    /** What the phone lends to the core; the tests move its clock. */
    var platform: () -> Platform = { Vault(this) }

    private var opened: Field? = null

    fun work(deed: () -> Unit): Future<*> = worker.submit {
        try {
            deed()
        } catch (e: Throwable) {
            // A bug; without this the executor would swallow it.
            Thread.currentThread().uncaughtExceptionHandler?.uncaughtException(Thread.currentThread(), e)
        }
    }

    /** The core, or a sentence that says why there is none. Call it on the worker. */
    fun field(): Result<Field> = try {
        Result.success(opened ?: Field.open(filesDir.resolve("journal").path, platform()).also { it.speak(languages()); opened = it })
    } catch (e: OpenException) {
        Result.failure(e)
    } catch (e: LinkageError) {
        val abi = Build.SUPPORTED_ABIS.firstOrNull() ?: "this processor"
        Result.failure(Exception("This copy of Stillbar has no core for this phone ($abi). Nothing can be recorded with it. Install the copy that was built for this phone.", e))
    }

    /** The phone's languages, the one liked best first. */
    private fun languages(): List<String> = resources.configuration.locales.let { all -> List(all.size()) { all[it].toLanguageTag() } }

    override fun onConfigurationChanged(now: Configuration) {
        super.onConfigurationChanged(now)
        work { opened?.speak(languages()) }
    }

    /** Lets go of the core, as the end of the process does. */
    fun close() {
        work { opened?.close(); opened = null }.get()
    }
}
