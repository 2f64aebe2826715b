package app.stillbar

import org.junit.runners.model.FrameworkMethod
import org.robolectric.RobolectricTestRunner
import org.robolectric.internal.bytecode.InstrumentationConfiguration

/** Keeps the bindings out of Robolectric's sandboxes: one copy for the one loaded core, or callbacks go to the wrong one unheard. */
class ShellRunner(tests: Class<*>) : RobolectricTestRunner(tests) {
    override fun createClassLoaderConfig(method: FrameworkMethod): InstrumentationConfiguration =
        InstrumentationConfiguration.Builder(super.createClassLoaderConfig(method)).doNotAcquirePackage("app.stillbar.core.").build()
}
