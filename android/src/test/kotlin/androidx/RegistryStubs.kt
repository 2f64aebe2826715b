@file:Suppress("PackageDirectoryMismatch", "unused", "UNUSED_PARAMETER")

package androidx.test.platform.app

import android.app.Instrumentation
import android.os.Bundle

object InstrumentationRegistry {
    @JvmStatic fun registerInstance(instrumentation: Instrumentation?, arguments: Bundle?) = Unit
}
