package app.stillbar

import android.Manifest
import android.app.Dialog
import android.content.ActivityNotFoundException
import android.content.Intent
import android.content.pm.PackageManager
import android.net.Uri
import android.view.HapticFeedbackConstants
import android.view.TextureView
import android.view.View
import android.view.ViewGroup.LayoutParams.MATCH_PARENT
import android.view.ViewGroup.LayoutParams.WRAP_CONTENT
import android.widget.LinearLayout
import app.stillbar.core.Errand
import app.stillbar.core.Outcome

/** Runs what only the phone can do, and brings back how it ended. The camera is a panel over the screen. */
class Errands(private val shell: Shell, private val app: StillbarApp) {
    private val style = Style(shell)
    private var panel: Dialog? = null
    private var eyes: Eyes? = null
    private var awaited = false

    fun run(wanted: List<Errand>) {
        for (errand in wanted) when (errand) {
            is Errand.Ring -> start(Intent(Intent.ACTION_DIAL, Uri.fromParts("tel", errand.number, null)))
            is Errand.Share -> start(
                Intent.createChooser(Intent(Intent.ACTION_SEND).setType("text/plain").putExtra(Intent.EXTRA_SUBJECT, errand.title).putExtra(Intent.EXTRA_TEXT, errand.text), errand.title),
            )
            is Errand.ShareFile -> start(Shared.chooser(shell, errand))
            is Errand.Buzz -> shell.window.decorView.performHapticFeedback(HapticFeedbackConstants.LONG_PRESS)
            is Errand.TakePhoto, is Errand.ScanTag -> Unit
        }
        resume()
    }

    /** Takes up the camera's errand that waits, if any. */
    fun resume() {
        val errand = app.pending ?: return
        if (panel != null || awaited) return
        if (shell.checkSelfPermission(Manifest.permission.CAMERA) == PackageManager.PERMISSION_GRANTED) return look(errand)
        awaited = true
        shell.requestPermissions(arrayOf(Manifest.permission.CAMERA), 1)
    }

    fun permitted() {
        awaited = false
        val allowed = shell.checkSelfPermission(Manifest.permission.CAMERA) == PackageManager.PERMISSION_GRANTED
        if (allowed) resume() else end(Outcome.Refused("Stillbar may not use the camera. Allow it in the phone's settings."))
    }

    /** The panel goes with its activity; the errand stays and is taken up again. */
    fun pause() {
        eyes?.close()
        panel?.dismiss()
        eyes = null
        panel = null
    }

    /** The person wants no picture. False if none was asked for. */
    fun refuse(): Boolean {
        if (app.pending == null) return false
        end(Outcome.Refused("The camera was closed."))
        return true
    }

    private fun look(errand: Errand) {
        val scanning = errand is Errand.ScanTag
        val eyes = app.eyes(shell).also { eyes = it }
        val view = TextureView(shell).apply { contentDescription = "What the camera sees" }
        val said = style.text(if (errand is Errand.TakePhoto) errand.hint else (errand as Errand.ScanTag).hint).named("camera-said")
        said.accessibilityLiveRegion = View.ACCESSIBILITY_LIVE_REGION_POLITE
        val column = LinearLayout(shell).apply {
            orientation = LinearLayout.VERTICAL
            setBackgroundColor(style.paper)
            pad(style.dp(16), style.dp(16))
            addView(view, LinearLayout.LayoutParams(MATCH_PARENT, 0, 1f))
            addView(said, MATCH_PARENT, WRAP_CONTENT)
        }
        fun press(id: String, label: String, deed: () -> Unit) =
            column.addView(style.button(id, label) { deed() }, LinearLayout.LayoutParams(MATCH_PARENT, WRAP_CONTENT).apply { topMargin = style.dp(8) })
        var lit = false
        if (eyes.hasLight) press("camera-light", "Light") { lit = !lit; eyes.light(lit) }
        if (!scanning) press("camera-shoot", "Take the photo", eyes::shoot)
        press("camera-stop", if (scanning) "Stop scanning" else "Take no photo") { refuse() }
        panel = Dialog(shell, android.R.style.Theme_Black_NoTitleBar).apply {
            setContentView(column)
            setOnCancelListener { refuse() }
            show()
        }
        eyes.open(view, scanning, seen = { picture ->
            when (picture) {
                is Picture.Photo -> shell.runOnUiThread { end(Outcome.Photo("image/jpeg", picture.bytes)) }
                is Picture.Luma -> frame(errand, picture) { text -> said.text = text }
            }
        }, trouble = { why -> shell.runOnUiThread { end(Outcome.Refused(why)) } })
    }

    /** One frame at a time: the answer says whether to go on. */
    private fun frame(errand: Errand, picture: Picture.Luma, say: (String) -> Unit) = app.work {
        val token = (app.pending as? Errand.ScanTag)?.takeIf { it == errand }?.token ?: return@work
        val field = app.field().getOrNull() ?: return@work
        val wanted = field.deliver(token, Outcome.Frame(picture.width.toUInt(), picture.height.toUInt(), picture.bytes))
        if (wanted.any { it is Errand.ScanTag }) {
            field.screen().notice?.let { shell.runOnUiThread { say(it.text) } }
            eyes?.next()
        } else {
            app.pending = null
            shell.runOnUiThread { pause(); shell.call { wanted } }
        }
    }

    private fun end(outcome: Outcome) {
        val token = when (val errand = app.pending) {
            is Errand.TakePhoto -> errand.token
            is Errand.ScanTag -> errand.token
            else -> return
        }
        app.pending = null
        pause()
        shell.call { it.deliver(token, outcome) }
    }

    private fun start(intent: Intent) = try {
        shell.startActivity(intent)
    } catch (_: ActivityNotFoundException) {
        // A tablet without a telephone: the number is on the screen.
    }
}
