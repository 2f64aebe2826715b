// The few androidx names that Robolectric's own code refers to. Google's registry, which has the real ones, is not needed then.
@file:Suppress("PackageDirectoryMismatch", "unused", "UNUSED_PARAMETER")

package androidx.test.runner.lifecycle

import android.app.Activity
import android.app.Application

enum class Stage { PRE_ON_CREATE, CREATED, STARTED, RESUMED, PAUSED, STOPPED, RESTARTED, DESTROYED }

enum class ApplicationStage { PRE_ON_CREATE, CREATED }

interface ActivityLifecycleMonitor

interface ApplicationLifecycleMonitor

object ActivityLifecycleMonitorRegistry {
    @JvmStatic fun registerInstance(monitor: ActivityLifecycleMonitor?) = Unit
}

object ApplicationLifecycleMonitorRegistry {
    @JvmStatic fun registerInstance(monitor: ApplicationLifecycleMonitor?) = Unit
}
