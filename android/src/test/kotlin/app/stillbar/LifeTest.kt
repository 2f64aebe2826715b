package app.stillbar

import android.app.job.JobParameters
import android.app.job.JobScheduler
import android.os.Looper
import android.os.SystemClock
import android.provider.Settings
import app.stillbar.core.PlatformException
import java.io.File
import java.util.concurrent.TimeUnit
import org.junit.Assert.assertArrayEquals
import org.junit.Assert.assertEquals
import org.junit.Assert.assertFalse
import org.junit.Assert.assertThrows
import org.junit.Assert.assertTrue
import org.junit.Test
import org.junit.runner.RunWith
import org.robolectric.Robolectric
import org.robolectric.Shadows.shadowOf
import org.robolectric.annotation.Config
import org.robolectric.annotation.GraphicsMode

/** Killed, turned, woken in the background, restored from a backup: nothing is lost, and what cannot go on says so. */
@RunWith(ShellRunner::class)
@GraphicsMode(GraphicsMode.Mode.NATIVE)
@Config(sdk = [34], application = StillbarApp::class, qualifiers = "w390dp-h844dp-xhdpi")
class LifeTest {
    private fun planned(): Pair<Rig, Player> {
        val rig = Rig()
        val player = Player(rig)
        listOf("people", "plan", "add-instruments", "circuits").forEach { player.play(journey(it)) }
        return rig to player
    }

    @Test
    fun aKilledProcessGoesOnWhereItWas() {
        val (rig, player) = planned()
        player.play("fill What was seen = Half a sente")
        // What is typed shows in the field; the screen has it when it is drawn anew.
        val before = rig.text.replace("What was seen: ", "What was seen: Half a sente")
        rig.kill()
        assertEquals(before.lines().filter { !it.startsWith("!") }, rig.text.lines().filter { !it.startsWith("!") })
        player.play(journey("isolate"))
        rig.kill()
        player.play(journey("prove"))
        assertTrue(rig.text, "[Proved dead]" in rig.text)
    }

    @Test
    fun aTurnOfThePhoneKeepsWhatIsTyped() {
        val (rig, player) = planned()
        player.play("fill What was seen = Washers")
        rig.controller.recreate()
        rig.idle()
        assertTrue(rig.text, "What was seen: Washers" in rig.text)
    }

    @Test
    fun aSecondTapDoesNothing() {
        val (rig, player) = planned()
        player.play("fill What was seen = Washers stopped")
        val button = rig.view(player.button("F1 washers is off and was seen to go off"))
        button.performClick()
        button.performClick()
        rig.idle()
        assertTrue(rig.text, "F2 lighting is off and was seen" in rig.text)
        assertFalse(rig.text, "changed before that tap" in rig.text)
    }

    /** A reading is what it looks like: a number or an answer, never both, and neither comes back after it was taken away. */
    @Test
    fun besideANumberNoAnswerLooksChosen() {
        val (rig, player) = planned()
        player.play(journey("isolate"))
        player.play(journey("prove").lines().takeWhile { !it.startsWith("read") }.joinToString("\n"))
        player.play("read N – L1 = Nothing")
        val pad = rig.shell.screen!!.blocks.filterIsInstance<app.stillbar.core.Block.Pad>().single()
        val row = "${pad.id}:0"
        fun chosen() = (rig.view("$row:0").parent as Flow).marks.count { it.isChecked }
        assertEquals(1, chosen())
        rig.type("$row:volts", "231")
        assertEquals(0, chosen())
        rig.tap("$row:0")
        assertEquals(0, chosen())
        assertTrue(rig.view("$row:clash").isShown)
        rig.controller.recreate()
        rig.idle()
        assertTrue(rig.text, "N – L1: 231" in rig.text)
        rig.type("$row:volts", "")
        assertFalse(rig.view("$row:clash").isShown)
        rig.controller.recreate()
        rig.idle()
        assertTrue(rig.text, Regex("N – L1: *$", RegexOption.MULTILINE).containsMatchIn(rig.text))
        assertEquals(0, chosen())
    }

    /** The site's network is too wide for a phone: it gets larger in steps, and a finger moves it. */
    @Test
    fun aWideDrawingIsMadeLargerAndMoved() {
        val rig = Rig()
        listOf("people", "forgotten", "network").forEach { Player(rig).play(journey(it)) }
        Player(rig).play("tap The job\ntap Supply network")
        val drawing = rig.shell.screen!!.blocks.filterIsInstance<app.stillbar.core.Block.Drawing>().single()
        fun picture(): IntArray {
            val view = rig.view(drawing.id)
            val bitmap = android.graphics.Bitmap.createBitmap(view.width, view.height, android.graphics.Bitmap.Config.ARGB_8888)
            view.draw(android.graphics.Canvas(bitmap))
            return IntArray(view.width * view.height).also { bitmap.getPixels(it, 0, view.width, 0, 0, view.width, view.height) }
        }
        fun touch(action: Int, x: Float, y: Float) =
            rig.view(drawing.id).dispatchTouchEvent(android.view.MotionEvent.obtain(0, 0, action, x, y, 0))
        val whole = picture()
        assertFalse(touch(android.view.MotionEvent.ACTION_DOWN, 300f, 100f))
        rig.tap("${drawing.id}:larger")
        val larger = picture()
        assertFalse(whole.contentEquals(larger))
        assertTrue(touch(android.view.MotionEvent.ACTION_DOWN, 300f, 100f))
        assertTrue(touch(android.view.MotionEvent.ACTION_MOVE, 200f, 60f))
        assertFalse(larger.contentEquals(picture()))
        rig.tap("${drawing.id}:smaller")
        assertArrayEquals(whole, picture())
    }

    /** In front the shell asks every two seconds whether anything changed by itself; behind it does not. */
    @Test
    fun itLooksForWhatChangedByItself() {
        val (rig, _) = planned()
        val before = rig.text
        shadowOf(Looper.getMainLooper()).idleFor(7, TimeUnit.SECONDS)
        rig.idle()
        assertEquals(before, rig.text)
        rig.controller.pause()
        shadowOf(Looper.getMainLooper()).runToEndOfTasks()
        rig.controller.resume()
        rig.idle()
        assertEquals(before, rig.text)
    }

    @Test
    fun backGoesUpAndThenOut() {
        val (rig, _) = planned()
        rig.shell.onBackPressed()
        rig.idle()
        rig.shell.onBackPressed()
        rig.idle()
        assertEquals("Jobs", rig.shell.screen!!.title)
        rig.shell.onBackPressed()
        assertTrue(rig.shell.isFinishing)
    }

    @Test
    fun theKeyIsSealedAndNeverDestroyed() {
        val rig = Rig()
        val vault = Vault(rig.app)
        val file = File(rig.app.noBackupFilesDir, "device.key")
        val secret = vault.loadSecret()!!
        val sealed = file.readBytes()
        assertFalse(sealed.toList().windowed(secret.size).any { it == secret.toList() })
        assertArrayEquals(secret, Vault(rig.app).loadSecret())
        // A journal that goes on under a new key: the former one is set aside, sealed as it was.
        vault.storeSecret(ByteArray(32) { 7 })
        assertArrayEquals(ByteArray(32) { 7 }, vault.loadSecret())
        assertArrayEquals(sealed, File(rig.app.noBackupFilesDir, "device.key.former-1").readBytes())
        file.writeBytes(sealed)
        assertArrayEquals(secret, vault.loadSecret())
        // Changed by a byte, or on a phone whose Keystore is another.
        file.writeBytes(sealed.clone().also { it[20] = (it[20] + 1).toByte() })
        assertThrows(PlatformException.Failed::class.java) { vault.loadSecret() }
        file.writeBytes(sealed)
        TestKeystore.keys.clear()
        val why = assertThrows(PlatformException.Failed::class.java) { vault.loadSecret() }
        assertTrue(why.toString(), "no longer has the key" in why.toString())
    }

    /** The end of the chain is kept beside the key, where no backup takes it, and the later one takes the place of the earlier. */
    @Test
    fun theEndOfTheChainIsKeptBesideTheKey() {
        val rig = Rig()
        Vault(rig.app).storeHead(byteArrayOf(1, 2))
        Vault(rig.app).storeHead(byteArrayOf(3))
        assertArrayEquals(byteArrayOf(3), Vault(rig.app).loadHead())
        assertEquals(setOf("device.key", "journal.head"), rig.app.noBackupFilesDir.list()!!.toSet())
        File(rig.app.noBackupFilesDir, "journal.head").delete()
        assertEquals(null, Vault(rig.app).loadHead())
    }

    /** Running time belongs to one start of the phone; where the phone does not count its starts, none is told. */
    @Test
    fun theRunningClockIsThatOfThisStart() {
        val rig = Rig()
        val resolver = rig.app.contentResolver
        Settings.Global.putInt(resolver, Settings.Global.BOOT_COUNT, 7)
        val one = Vault(rig.app).running()!!
        SystemClock.setCurrentTimeMillis(SystemClock.uptimeMillis() + 3_600_000)
        val two = Vault(rig.app).running()!!
        assertEquals(7uL, one.start)
        assertEquals(one.start, two.start)
        assertTrue("$one $two", two.ms >= one.ms + 3_600_000uL)
        Settings.Global.putInt(resolver, Settings.Global.BOOT_COUNT, -1)
        assertEquals(null, Vault(rig.app).running())
    }

    @Test
    fun aJournalThatCannotBeOpenedSaysWhyAndNothingIsLost() {
        val (rig, _) = planned()
        val file = File(rig.app.noBackupFilesDir, "device.key")
        val sealed = file.readBytes()
        file.delete()
        rig.kill()
        assertTrue(rig.shown(), "device.key" in rig.shown())
        file.writeBytes(sealed)
        rig.tap("again")
        assertTrue(rig.text, "Switch off the loads" in rig.text)
    }

    @Test
    fun inAQuietMomentTheCoreIsTold() {
        val (rig, player) = planned()
        player.play(journey("isolate"))
        val job = rig.app.getSystemService(JobScheduler::class.java).allPendingJobs.single()
        assertTrue(job.isRequireBatteryNotLow && job.requiredNetwork != null)
        val photos = rig.app.filesDir.resolve("journal/photos")
        val copy = photos.listFiles()!!.first { it.name.endsWith(".320.jpg") }
        copy.delete()
        val service = Robolectric.setupService(Tending::class.java)
        val parameters = org.robolectric.shadow.api.Shadow.newInstanceOf(JobParameters::class.java)
        assertTrue(service.onStartJob(parameters))
        rig.idle()
        assertTrue(copy.exists())
        assertTrue(shadowOf(service).isJobFinished)
        assertFalse(shadowOf(service).isRescheduleNeeded)
    }
}
