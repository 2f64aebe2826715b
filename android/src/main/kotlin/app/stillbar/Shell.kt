package app.stillbar

import android.app.Activity
import android.graphics.Bitmap
import android.graphics.BitmapFactory
import android.net.ConnectivityManager
import android.os.Build
import android.os.Bundle
import android.os.Handler
import android.os.Looper
import android.view.Gravity
import android.view.View
import android.view.ViewGroup.LayoutParams.MATCH_PARENT
import android.view.ViewGroup.LayoutParams.WRAP_CONTENT
import android.view.Window
import android.view.WindowInsets
import android.widget.EditText
import android.widget.FrameLayout
import android.widget.LinearLayout
import android.widget.ScrollView
import app.stillbar.core.Errand
import app.stillbar.core.Field
import app.stillbar.core.Screen

/** The one activity: shows the core's screen, sends back what the person did, and has errands run. */
class Shell : Activity(), Host {
    private val app get() = application as StillbarApp
    private val errands by lazy { Errands(this, app) }
    private val style by lazy { Style(this) }
    private lateinit var root: FrameLayout
    private var scroll: ScrollView? = null
    private var form: Form? = null
    private var acting = false
    private var scrolledTo = 0
    private val pulse = Handler(Looper.getMainLooper())
    private var stirred: ULong? = null

    /** What is shown. */
    var screen: Screen? = null
        private set

    override fun onCreate(state: Bundle?) {
        super.onCreate(state)
        requestWindowFeature(Window.FEATURE_NO_TITLE)
        scrolledTo = state?.getInt(SCROLLED) ?: 0
        root = FrameLayout(this).apply {
            setBackgroundColor(style.paper)
            setOnApplyWindowInsetsListener { view, insets -> view.inset(insets); insets }
        }
        setContentView(root)
        Tending.ask(this)
        refresh()
    }

    override fun onSaveInstanceState(out: Bundle) {
        super.onSaveInstanceState(out)
        out.putInt(SCROLLED, scroll?.scrollY ?: 0)
    }

    override fun onResume() {
        super.onResume()
        errands.resume()
        val free = !getSystemService(ConnectivityManager::class.java).isActiveNetworkMetered
        app.work { app.field().getOrNull()?.goodTime(free) }
        pulse.postDelayed(watch, PULSE_MS)
    }

    override fun onPause() {
        pulse.removeCallbacks(watch)
        errands.pause()
        super.onPause()
    }

    @Deprecated("the newer call needs API 33; the manifest keeps this one alive")
    override fun onBackPressed() {
        val up = screen?.up
        when {
            errands.refuse() -> Unit
            up != null -> act(up.action)
            else -> finish()
        }
    }

    override fun act(action: String) {
        val (form, turn) = (form ?: return) to screen?.turn
        // A second tap while the first is under way does nothing.
        if (acting || action.isEmpty()) return
        acting = true
        call { it.act(turn, action, form.filled()) }
    }

    override fun picture(sha256: String, show: (Bitmap) -> Unit) {
        app.work {
            val bytes = app.field().getOrNull()?.photo(sha256 + SMALL) ?: return@work
            val bitmap = BitmapFactory.decodeByteArray(bytes, 0, bytes.size) ?: return@work
            runOnUiThread { show(bitmap) }
        }
    }

    /** Calls the core on its thread, then shows the screen and runs what errands came back. */
    fun call(deed: (Field) -> List<Errand>) {
        app.work {
            val field = app.field().getOrElse { why -> return@work runOnUiThread { broken(why.message.orEmpty()) } }
            val wanted = deed(field)
            val next = field.screen()
            // An errand must not be lost if the phone is turned just now: whichever activity is there takes it up.
            wanted.lastOrNull { it is Errand.TakePhoto || it is Errand.ScanTag }?.let { app.pending = it }
            runOnUiThread {
                acting = false
                if (isDestroyed) return@runOnUiThread
                show(next)
                errands.run(wanted)
            }
        }
    }

    private fun refresh() = call { emptyList() }

    /** Shows what changed without a tap, such as a lock that another phone told of; never under a finger that types. */
    private val watch: Runnable = Runnable {
        app.work {
            val now = app.field().getOrNull()?.stirred() ?: return@work
            runOnUiThread {
                if (currentFocus is EditText || acting) return@runOnUiThread
                if (stirred != null && stirred != now) refresh()
                stirred = now
            }
        }
        pulse.postDelayed(watch, PULSE_MS)
    }

    private fun show(next: Screen) {
        val before = screen
        val held = currentFocus?.tag
        val offset = if (before == null) scrolledTo else if (same(before, next)) scroll?.scrollY ?: 0 else 0
        val made = Form(next) { field, value -> app.work { app.field().getOrNull()?.edit(field, value) } }
        screen = next
        form = made
        lay(next, Render(style, made, this), pinned = true)
        if (before?.route == next.route && held != null) root.findViewWithTag<View>(held)?.requestFocus()
        scroll?.post { scroll?.scrollTo(0, offset) }
        if (Build.VERSION.SDK_INT >= 28) root.accessibilityPaneTitle = next.title
    }

    /** On the same route, too, another title or standing is a new thing to read from its top. */
    private fun same(a: Screen, b: Screen) = a.route == b.route && a.title == b.title && a.standing?.word == b.standing?.word

    private fun lay(screen: Screen, render: Render, pinned: Boolean) {
        val top = screen.standing?.let(render::standing)
        val foot = style.column(style.dp(16), *listOfNotNull(screen.notice?.let { render.notice(it.tone, it.text) }, screen.main?.let(render::main)).toTypedArray())
        foot.pad(style.dp(16), style.gap)
        foot.visibility = if (foot.childCount == 0) View.GONE else View.VISIBLE
        val plate = style.text(screen.context, 16f, colour = style.faint).named("context")
        val head = LinearLayout(this).apply {
            gravity = Gravity.CENTER_VERTICAL
            isBaselineAligned = false
            screen.up?.let { addView(render.up(it)) }
            // Beside the button there is no room for large letters.
            if (resources.configuration.fontScale < 1.3f) {
                addView(plate, LinearLayout.LayoutParams(0, WRAP_CONTENT, 1f).apply { marginStart = if (screen.up == null) 0 else style.gap })
            } else {
                orientation = LinearLayout.VERTICAL
                gravity = Gravity.START
                addView(plate, LinearLayout.LayoutParams(MATCH_PARENT, WRAP_CONTENT).apply { topMargin = style.dp(8) })
            }
        }
        val body = style.column(style.dp(16), head, render.title(screen), *render.blocks(screen).toTypedArray()).apply { pad(style.dp(16), style.gap) }
        val all = listOfNotNull(top.takeUnless { pinned }, body, foot.takeUnless { pinned })
        val list = ScrollView(this).apply { addView(if (all.size == 1) body else style.column(0, *all.toTypedArray())) }
        scroll = list
        val page = LinearLayout(this).apply { orientation = LinearLayout.VERTICAL }
        if (pinned) top?.let { page.addView(it, MATCH_PARENT, WRAP_CONTENT) }
        page.addView(list, LinearLayout.LayoutParams(MATCH_PARENT, 0, 1f))
        if (pinned) page.addView(foot, MATCH_PARENT, WRAP_CONTENT)
        root.removeAllViews()
        root.addView(page)
        if (pinned) page.addOnLayoutChangeListener { _, _, _, _, _, _, _, _, _ ->
            // What sticks to the edges takes half the height at most: a short screen or large letters need the rest.
            val taken = (top?.height ?: 0) + foot.height
            if (taken > page.height / 2 && page.parent === root) root.post { if (page.parent === root) lay(screen, render, pinned = false) }
        }
    }

    /** There is no core: says why, and lets the person try again. */
    private fun broken(why: String) {
        acting = false
        val said = style.column(
            style.dp(16),
            style.text("Stillbar cannot start", 28f, bold = true),
            style.text(why).named("trouble"),
            style.button("again", "Try again") { refresh() },
        )
        root.removeAllViews()
        root.addView(ScrollView(this).apply { addView(said.apply { pad(style.dp(16), style.dp(16)) }) })
    }

    private fun View.inset(insets: WindowInsets) {
        if (Build.VERSION.SDK_INT >= 30) {
            val bars = insets.getInsets(WindowInsets.Type.systemBars() or WindowInsets.Type.displayCutout() or WindowInsets.Type.ime())
            setPadding(bars.left, bars.top, bars.right, bars.bottom)
        } else {
            @Suppress("DEPRECATION")
            setPadding(insets.systemWindowInsetLeft, insets.systemWindowInsetTop, insets.systemWindowInsetRight, insets.systemWindowInsetBottom)
        }
    }

    override fun onRequestPermissionsResult(code: Int, names: Array<String>, granted: IntArray) = errands.permitted()

    private companion object {
        const val PULSE_MS = 2000L
        const val SCROLLED = "scrolled"
        const val SMALL = ".320.jpg"
    }
}
