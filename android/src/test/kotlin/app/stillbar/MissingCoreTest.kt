package app.stillbar

import org.junit.Assert.assertTrue
import org.junit.Test
import org.junit.runner.RunWith
import org.robolectric.annotation.Config

/** A package without the core for this phone's processor says so at its start. */
@RunWith(ShellRunner::class)
@Config(sdk = [34], application = StillbarApp::class)
class MissingCoreTest {
    @Test
    fun itSaysWhatToInstall() {
        System.setProperty("uniffi.component.stillbar_core.libraryOverride", "nowhere")
        repeat(2) {
            val rig = Rig()
            assertTrue(rig.shown(), "no core for this phone" in rig.shown() && "Install the copy" in rig.shown())
            rig.tap("again")
            assertTrue(rig.shown(), "no core for this phone" in rig.shown())
        }
    }
}
