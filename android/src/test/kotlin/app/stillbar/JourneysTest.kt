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
    private fun play(story: String, eyes: Looking = Looking()): Rig {
        val rig = Rig()
        val player = Player(rig) { eyes.look(rig) }
        stories.getValue(story).forEach { player.play(journey(it)) }
        return rig
    }

    @Test
    fun fromThePlanToTheHandBack() {
        val rig = play("whole-job", Looking("day"))
        assertTrue(rig.text, "[Handed back]" in rig.text)
        // Every callback reached the phone that this test lent, not a copy of it.
        val all = setOf("nowMs", "offsetMinutes", "running", "random", "loadSecret", "storeSecret", "loadHead", "storeHead")
        assertEquals(all, rig.phone.calls.keys)
        assertEquals(2, rig.eyes.opened)
    }

    @Test
    fun aWrongReadingStopsTheWork() {
        val rig = play("wrong-reading", Looking("stop"))
        assertTrue(rig.text, "Stop, treat as live" in rig.text)
    }

    /** The stories that no other test here plays: several locks, hand-over, lock box, forced removal, tags and the rest. */
    @Test
    fun everyOtherStory() {
        val elsewhere = setOf("whole-job", "wrong-reading", "several-locks", "shift")
        val rest = stories.keys - elsewhere
        assertTrue("$rest", rest.size >= 7)
        for (story in rest) {
            val rig = play(story, Looking(story))
            rig.close()
        }
    }

    @Test
    @Config(qualifiers = "w390dp-h844dp-night-xhdpi")
    fun inTheDark() {
        play("several-locks", Looking("night"))
    }

    @Test
    @Config(qualifiers = "ar-ldrtl-w390dp-h844dp-xhdpi")
    fun fromRightToLeft() {
        val rig = play("several-locks", Looking("right-to-left"))
        assertEquals(android.view.View.LAYOUT_DIRECTION_RTL, rig.view("title").layoutDirection)
    }

    /** A whole job in the phone's language, as `core/tests/it/languages.rs` has written it down. */
    private fun inLanguage(language: String) {
        val rig = Rig()
        val eyes = Looking()
        Player(rig) { eyes.look(rig) }.play(journey("in/$language"))
        assertEquals(language, rig.shell.screen?.language)
    }

    @Test
    @Config(qualifiers = "de-w390dp-h844dp-xhdpi")
    fun inGerman() = inLanguage("de")

    @Test
    @Config(qualifiers = "es-w390dp-h844dp-xhdpi")
    fun inSpanish() = inLanguage("es")

    @Test
    @Config(qualifiers = "en-rXA-w390dp-h844dp-xhdpi")
    fun inLongerWords() = inLanguage("en-XA")

    @Test
    @Config(qualifiers = "ar-rXB-ldrtl-w390dp-h844dp-xhdpi")
    fun inMirroredWords() = inLanguage("ar-XB")

    @Test
    fun withLettersTwiceAsLarge() {
        org.robolectric.RuntimeEnvironment.setFontScale(2f)
        play("shift", Looking("large"))
    }

    @Test
    @Config(qualifiers = "w844dp-h390dp-land-xhdpi")
    fun onItsSide() {
        play("wrong-reading", Looking("side"))
    }
}
