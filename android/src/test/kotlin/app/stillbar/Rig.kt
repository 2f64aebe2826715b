package app.stillbar

import android.Manifest
import android.app.Application
import android.content.pm.ApplicationInfo
import android.os.Looper
import android.view.TextureView
import android.view.View
import android.view.ViewGroup
import android.widget.CompoundButton
import android.widget.TextView
import app.stillbar.core.Platform
import app.stillbar.core.Running
import app.stillbar.core.asText
import java.io.File
import java.security.Security
import org.robolectric.Robolectric
import org.robolectric.RuntimeEnvironment
import org.robolectric.Shadows.shadowOf
import org.robolectric.android.controller.ActivityController
import org.robolectric.shadows.ShadowDialog

/** The repository that is tested. */
val repository = File(System.getProperty("stillbar.repository")!!)

fun journey(name: String): String = repository.resolve("core/journeys/$name.journey").readText()

/** Whole stories by name, each a list of journeys. */
val stories: Map<String, List<String>> = repository.resolve("core/journeys/stories.txt").readLines().filter { !it.startsWith("#") }
    .associate { line -> line.substringBefore(": ") to line.substringAfter(": ").split(' ') }

/** A camera that gives what the test has for it. */
class TestEyes : Eyes {
    var opened = 0
    var closed = 0
    var lit = false
    private var seen: ((Picture) -> Unit)? = null
    private var trouble: ((String) -> Unit)? = null
    var next = 0
    var shows: Picture? = null
    override val hasLight = true

    override fun open(view: TextureView, frames: Boolean, seen: (Picture) -> Unit, trouble: (String) -> Unit) {
        opened++
        this.seen = seen
        this.trouble = trouble
    }

    override fun next() {
        next++
    }

    override fun shoot() = seen!!(shows!!)
    override fun light(on: Boolean) {
        lit = on
    }

    override fun close() {
        closed++
    }

    fun see(picture: Picture) = seen!!(picture)
    fun fail(why: String) = trouble!!(why)
}

/** What the phone lends, counted, with a clock that the test moves. */
class TestPhone(private val real: Platform) : Platform {
    var ahead = 0L
    val calls = HashMap<String, Int>()

    private fun <T> counted(name: String, value: T): T = value.also { calls.merge(name, 1, Int::plus) }

    override fun nowMs() = counted("nowMs", real.nowMs() + ahead)
    override fun offsetMinutes(atMs: Long) = counted("offsetMinutes", real.offsetMinutes(atMs))
    override fun random(count: UInt) = counted("random", real.random(count))
    override fun running() = counted("running", Running(1u, (real.nowMs() + ahead).toULong()))
    override fun loadSecret() = counted("loadSecret", real.loadSecret())
    override fun storeSecret(secret: ByteArray) = counted("storeSecret", real.storeSecret(secret))
    override fun loadHead() = counted("loadHead", real.loadHead())
    override fun storeHead(head: ByteArray) = counted("storeHead", real.storeHead(head))
}

/** The real activity over the real core, in a phone of the test's own. */
class Rig(grant: Boolean = true) {
    init {
        if (Security.getProvider(TestKeystore.NAME) == null) Security.addProvider(TestKeystore())
    }

    val app = RuntimeEnvironment.getApplication() as StillbarApp
    val phone = TestPhone(Vault(app))
    val eyes = TestEyes()
    lateinit var controller: ActivityController<Shell>
    val shell: Shell get() = controller.get()

    init {
        // As the manifest says.
        app.applicationInfo.flags = app.applicationInfo.flags or ApplicationInfo.FLAG_SUPPORTS_RTL
        app.platform = { phone }
        app.eyes = { eyes }
        if (grant) shadowOf(app as Application).grantPermissions(Manifest.permission.CAMERA)
        launch()
    }

    fun launch() {
        controller = Robolectric.buildActivity(Shell::class.java).setup()
        idle()
    }

    /** Until the core and the screen have nothing left to do. */
    fun idle() = repeat(4) {
        app.work {}.get()
        shadowOf(Looper.getMainLooper()).idle()
    }

    /** The process is killed, and the person starts the app again. */
    fun kill() {
        stop()
        launch()
    }

    /** The phone goes to somebody else, empty. */
    fun close() {
        stop()
        app.filesDir.deleteRecursively()
        app.noBackupFilesDir.deleteRecursively()
        TestKeystore.keys.clear()
    }

    private fun stop() {
        controller.pause().stop().destroy()
        app.close()
        app.pending = null
    }

    val text: String get() = asText(shell.screen!!)

    fun view(id: String): View = found(id) ?: throw AssertionError("no view is called $id:\n$text")

    fun found(id: String): View? = windows().firstNotNullOfOrNull { it.findViewWithTag(id) }

    /** As a thumb does it: what is not shown, not enabled or too small for a glove cannot be tapped. */
    fun tap(id: String) {
        val view = view(id)
        check(view.isShown && view.isEnabled) { "$id cannot be tapped" }
        val least = 48 * view.resources.displayMetrics.density - 1
        check(view.height >= least && view.width >= least) { "$id is ${view.width} x ${view.height} px" }
        check(view.performClick() || view is CompoundButton) { "nothing listens to $id" }
        idle()
    }

    fun type(id: String, text: String) {
        (view(id) as TextView).text = text
        idle()
    }

    /** All that is written or would be read out. */
    fun shown(): String = windows().flatMap(::within).flatMap { listOfNotNull((it as? TextView)?.text, it.contentDescription) }.joinToString("\n")

    fun views(): List<View> = windows().flatMap(::within)

    /** The window on top: the camera's panel, or the screen. */
    fun top(): View = windows().first()

    private fun windows(): List<View> = listOfNotNull(ShadowDialog.getLatestDialog()?.takeIf { it.isShowing }?.window?.decorView, shell.window.decorView)

    private fun within(view: View): List<View> =
        listOf(view) + if (view is ViewGroup) (0 until view.childCount).flatMap { within(view.getChildAt(it)) } else emptyList()
}
