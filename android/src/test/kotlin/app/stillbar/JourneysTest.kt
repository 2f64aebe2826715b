package app.stillbar

import org.junit.Assert.assertEquals
import org.junit.Assert.assertTrue
import org.junit.Test
import org.junit.runner.RunWith
import org.robolectric.annotation.Config
import org.robolectric.annotation.GraphicsMode

/** Whole jobs through the real views, with every screen looked over on the way. */
@RunWith(ShellRunner::class)
@GraphicsMode(GraphicsMode.Mode.NATIVE)
@Config(sdk = [34], application = StillbarApp::class, qualifiers = "w390dp-h844dp-xhdpi")
class JourneysTest {
    private fun play(vararg names: String, eyes: Looking = Looking()): Rig {
        val rig = Rig()
        val player = Player(rig) { eyes.look(rig) }
        names.forEach { player.play(journey(it)) }
        return rig
    }

    @Test
    fun fromThePlanToTheHandBack() {
        val rig = play("people", "plan", "add-instruments", "circuits", "isolate", "prove", "work", "restore", eyes = Looking("day"))
        assertTrue(rig.text, "[Handed back]" in rig.text)
        // Every callback reached the phone that this test lent, not a copy of it.
        assertEquals(setOf("nowMs", "offsetMinutes", "random", "loadSecret", "storeSecret"), rig.phone.calls.keys)
        assertEquals(2, rig.eyes.opened)
    }

    @Test
    fun aWrongReadingStopsTheWork() {
        val rig = play("people", "plan", "add-instruments", "circuits", "isolate", "indication", eyes = Looking("stop"))
        assertTrue(rig.text, "Stop, treat as live" in rig.text)
    }

    @Test
    @Config(qualifiers = "w390dp-h844dp-night-xhdpi")
    fun inTheDark() {
        play("people", "plan", "add-instruments", "circuits", "isolate", eyes = Looking("night"))
    }

    @Test
    @Config(qualifiers = "ar-ldrtl-w390dp-h844dp-xhdpi")
    fun fromRightToLeft() {
        val rig = play("people", "plan", "add-instruments", "circuits", "isolate", eyes = Looking("right-to-left"))
        assertEquals(android.view.View.LAYOUT_DIRECTION_RTL, rig.view("title").layoutDirection)
    }

    @Test
    fun withLettersTwiceAsLarge() {
        org.robolectric.RuntimeEnvironment.setFontScale(2f)
        play("people", "plan", "add-instruments", "circuits", "isolate", "prove", eyes = Looking("large"))
    }

    @Test
    @Config(qualifiers = "w844dp-h390dp-land-xhdpi")
    fun onItsSide() {
        play("people", "plan", "add-instruments", "circuits", "isolate", "indication", eyes = Looking("side"))
    }
}
