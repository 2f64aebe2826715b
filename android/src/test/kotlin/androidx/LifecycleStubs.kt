@file:Suppress("PackageDirectoryMismatch", "unused", "UNUSED_PARAMETER")

package androidx.test.internal.runner.lifecycle

import android.app.Activity
import android.app.Application
import androidx.test.runner.lifecycle.ActivityLifecycleMonitor
import androidx.test.runner.lifecycle.ApplicationLifecycleMonitor
import androidx.test.runner.lifecycle.ApplicationStage
import androidx.test.runner.lifecycle.Stage

class ActivityLifecycleMonitorImpl : ActivityLifecycleMonitor {
    fun signalLifecycleChange(stage: Stage, activity: Activity) = Unit
}

class ApplicationLifecycleMonitorImpl : ApplicationLifecycleMonitor {
    fun signalLifecycleChange(application: Application, stage: ApplicationStage) = Unit
}
