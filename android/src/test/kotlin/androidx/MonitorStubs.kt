@file:Suppress("PackageDirectoryMismatch", "unused", "UNUSED_PARAMETER")

package androidx.test.internal.runner.intent

import android.content.Intent
import androidx.test.runner.intent.IntentMonitor

class IntentMonitorImpl : IntentMonitor {
    fun signalIntent(intent: Intent) = Unit
}
