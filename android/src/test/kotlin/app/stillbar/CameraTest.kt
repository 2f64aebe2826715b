package app.stillbar

import android.Manifest
import android.app.Application
import android.content.Intent
import android.net.Uri
import android.os.ParcelFileDescriptor
import android.provider.OpenableColumns
import org.junit.Assert.assertEquals
import org.junit.Assert.assertFalse
import org.junit.Assert.assertNotNull
import org.junit.Assert.assertNull
import org.junit.Assert.assertThrows
import org.junit.Assert.assertTrue
import org.junit.Test
import org.junit.runner.RunWith
import org.robolectric.Robolectric
import org.robolectric.Shadows.shadowOf
import org.robolectric.annotation.Config
import org.robolectric.annotation.GraphicsMode
import java.io.FileNotFoundException

/** What only the phone can do: the camera, ringing, sharing, the light. */
@RunWith(ShellRunner::class)
@GraphicsMode(GraphicsMode.Mode.NATIVE)
@Config(sdk = [34], application = StillbarApp::class, qualifiers = "w390dp-h844dp-xhdpi")
class CameraTest {
    private val tag = "STB7K2M9PX4W6BHE"

    private fun isolated(grant: Boolean = true): Pair<Rig, Player> {
        val rig = Rig(grant)
        val player = Player(rig) { Looking("camera").look(rig) }
        listOf("people", "plan", "add-instruments", "circuits").forEach { player.play(journey(it)) }
        // Up to the first photo.
        player.play(journey("isolate").lines().takeWhile { !it.startsWith("photo") }.joinToString("\n"))
        return rig to player
    }

    @Test
    fun aTagIsScannedBoundAndAnswers() {
        val (rig, player) = isolated()
        player.play("tap Tag of Q4 feeder switch\nscan Scan the tag here = $tag\nsee A blank tag\ntap It hangs at Q4 feeder switch\nsee This is Q4 feeder switch, by its tag")
        player.play("tap The job\ntap All jobs\nscan Scan a tag = $tag\nsee Hangs at: Q4 feeder switch\nsee Key holder: Mara Lind")
        player.play("tap Ring Mara Lind")
        val ringing = shadowOf(rig.shell).nextStartedActivity
        assertEquals(Intent.ACTION_DIAL to "tel:01632%20960%20101", ringing.action to ringing.dataString)
        player.play("tap All jobs\ntap Locks on now\ntap Share this as a message")
        val sent = shadowOf(rig.shell).nextStartedActivity.getParcelableExtra(Intent.EXTRA_INTENT, Intent::class.java)!!
        assertEquals(Intent.ACTION_SEND, sent.action)
        assertTrue("lock ML 7" in sent.getStringExtra(Intent.EXTRA_TEXT)!!)
    }

    @Test
    fun theRecordIsLentToWhomThePersonChose() {
        val (rig, player) = isolated()
        player.play("tap The job\ntap Record of this job\ntap Share the record\nsee The record is made")
        val sent = shadowOf(rig.shell).nextStartedActivity.getParcelableExtra(Intent.EXTRA_INTENT, Intent::class.java)!!
        assertEquals(Intent.ACTION_SEND to "application/pdf", sent.action to sent.type)
        assertTrue(sent.flags and Intent.FLAG_GRANT_READ_URI_PERMISSION != 0)
        val uri = sent.getParcelableExtra(Intent.EXTRA_STREAM, Uri::class.java)!!
        val lender = Robolectric.buildContentProvider(Shared::class.java).create(uri.authority).get()
        val lent = ParcelFileDescriptor.AutoCloseInputStream(lender.openFile(uri, "r")).use { it.readBytes() }
        assertEquals("%PDF-", lent.decodeToString(0, 5))
        lender.query(uri, null, null, null, null).use {
            it.moveToFirst()
            assertEquals(lent.size.toLong(), it.getLong(it.getColumnIndexOrThrow(OpenableColumns.SIZE)))
        }
        assertThrows(FileNotFoundException::class.java) { lender.openFile(uri, "rw") }
        // Nothing else of the app, by whatever name.
        for (name in listOf("../device.key", "..", "journal.db", ".")) {
            val other = uri.buildUpon().path("/").appendPath(name).build()
            assertThrows(name, FileNotFoundException::class.java) { lender.openFile(other, "r") }
        }
    }

    @Test
    fun aScanGoesOnUntilThereIsATag() {
        val (rig, player) = isolated()
        player.play("tap The job\ntap All jobs")
        rig.tap(player.button("Scan a tag"))
        assertEquals(1, rig.eyes.opened)
        Looking("camera").look(rig)
        rig.eyes.see(Picture.Luma(64, 48, ByteArray(64 * 48) { 90 }))
        rig.idle()
        assertEquals(1, rig.eyes.next)
        rig.eyes.see(Player.frameOf("https://example.org/"))
        rig.eyes.see(Player.frameOf("https://example.org/"))
        rig.idle()
        assertTrue(rig.shown(), "Nothing was opened" in rig.shown())
        rig.tap("camera-light")
        assertTrue(rig.eyes.lit)
        rig.eyes.see(Player.frameOf(tag))
        rig.idle()
        assertNull(rig.found("camera-stop"))
        assertEquals(1, rig.eyes.closed)
        assertTrue(rig.text, "knows nothing of this tag" in rig.text)
    }

    @Test
    fun aPhotoIsKeptAndShown() {
        val (rig, player) = isolated()
        player.play("photo Photo of Q4 feeder switch")
        assertTrue(rig.text, "The photo is saved" in rig.text || "Q9" in rig.text)
        player.play("tap The job\ntap Isolate Q4 feeder switch\nsee 1 kept".removeSuffix("\nsee 1 kept"))
        assertTrue(rig.text, "(1 kept)" in rig.text)
        val shown = rig.views().filterIsInstance<android.widget.ImageView>().single { it.contentDescription != null }
        assertNotNull(shown.drawable)
    }

    @Test
    fun whatIsWrongWithTheCameraIsSaid() {
        val (rig, player) = isolated()
        val take = { rig.tap(player.button("Take the photo now")) }
        take()
        rig.tap("camera-stop")
        assertTrue(rig.text, "! The camera was closed." in rig.text)
        take()
        rig.eyes.fail("Another app took the camera.")
        rig.idle()
        assertTrue(rig.text, "! Another app took the camera." in rig.text)
        take()
        rig.shell.onBackPressed()
        rig.idle()
        assertTrue(rig.text, "! The camera was closed." in rig.text)
        rig.eyes.shows = Picture.Photo(ByteArray(10))
        take()
        rig.tap("camera-shoot")
        assertTrue(rig.text, "not a JPEG" in rig.text)
        assertNull(rig.app.pending)
    }

    @Test
    fun aTurnOfThePhoneKeepsTheCameraOpen() {
        val (rig, player) = isolated()
        rig.tap(player.button("Take the photo now"))
        rig.controller.recreate()
        rig.idle()
        assertEquals(2 to 1, rig.eyes.opened to rig.eyes.closed)
        rig.eyes.shows = Picture.Photo(repository.resolve("core/src/demo/lock.png").readBytes())
        rig.tap("camera-shoot")
        assertFalse(rig.text, "was not asked for" in rig.text)
    }

    @Test
    fun withoutPermissionItSaysWhereToGiveIt() {
        val (rig, player) = isolated(grant = false)
        rig.tap(player.button("Take the photo now"))
        assertEquals(listOf(Manifest.permission.CAMERA), shadowOf(rig.shell).lastRequestedPermission.requestedPermissions.toList())
        assertEquals(0, rig.eyes.opened)
        rig.shell.onRequestPermissionsResult(1, arrayOf(Manifest.permission.CAMERA), intArrayOf(-1))
        rig.idle()
        assertTrue(rig.text, "Allow it in the phone's settings" in rig.text)
        shadowOf(rig.app as Application).grantPermissions(Manifest.permission.CAMERA)
        rig.tap(player.button("Take the photo now"))
        assertEquals(1, rig.eyes.opened)
    }

    @Test
    fun planesSizesAndTurns() {
        val plane = ByteArray(3 * 8 - 4) { it.toByte() }
        val read = { to: ByteArray, at: Int, length: Int, from: Int -> plane.copyInto(to, at, from, from + length); Unit }
        assertEquals(listOf(0, 1, 2, 3, 8, 9, 10, 11, 16, 17, 18, 19), packed(4, 3, 8, read).map { it.toInt() })
        assertEquals(listOf(0, 1, 2, 3, 4, 5), packed(3, 2, 3, read).map { it.toInt() })
        val sizes = listOf(640 to 480, 1280 to 720, 1280 to 960, 4000 to 3000, 8160 to 6120)
        assertEquals(1280 to 960, fitting(sizes, 1280))
        assertEquals(640 to 480, fitting(sizes, 320))
        assertNull(fitting(emptyList(), 320))
        // A sensor that lies at 90 degrees: upright in portrait, as it is in landscape.
        assertEquals(listOf(90, 0, 270, 180), listOf(0, 90, 180, 270).map { upright(90, it) })
    }
}
