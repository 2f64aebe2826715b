@file:Suppress("PackageDirectoryMismatch", "unused", "UNUSED_PARAMETER")

package androidx.test.runner.intent

import android.app.Instrumentation
import android.content.Intent

interface IntentMonitor

interface IntentStubber {
    fun getActivityResultForIntent(intent: Intent): Instrumentation.ActivityResult?
}

object IntentMonitorRegistry {
    @JvmStatic fun registerInstance(monitor: IntentMonitor?) = Unit
}

object IntentStubberRegistry {
    @JvmStatic fun isLoaded() = false
    @JvmStatic fun getInstance(): IntentStubber = error("none is loaded")
}
