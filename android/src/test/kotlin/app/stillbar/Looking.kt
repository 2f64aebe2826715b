package app.stillbar

import android.graphics.Bitmap
import android.graphics.Canvas
import android.view.View
import android.widget.ImageView
import android.widget.ScrollView
import android.widget.TextView
import app.stillbar.core.Block
import java.io.File

/** Looks a screen over: nothing clipped, targets large enough, everything that can be tapped has a name; and a picture of it. */
class Looking(private val series: String = "") {
    private val pictured = HashSet<String>()

    fun look(rig: Rig) {
        val density = rig.shell.resources.displayMetrics.density
        for (view in rig.views().filter { it.isShown }) {
            val name = "${view.tag ?: view.javaClass.simpleName} on ${rig.shell.screen!!.title}"
            if (view is TextView && view.text.isNotEmpty()) unclipped(view, name)
            if (view.isClickable && view.javaClass.name.startsWith("android.widget")) {
                check(view.height >= 48 * density - 1 && view.width >= 48 * density - 1) { "$name is ${view.width} x ${view.height} px: too small for a glove" }
                check(said(rig, view).isNotBlank()) { "$name says nothing to a screen reader" }
            }
            if (view is ImageView && view.contentDescription == null) {
                check(view.importantForAccessibility != View.IMPORTANT_FOR_ACCESSIBILITY_AUTO) { "$name has no words" }
            }
        }
        picture(rig)
    }

    private fun unclipped(view: TextView, name: String) {
        val layout = view.layout ?: error("$name is not laid out")
        val (across, down) = view.width - view.compoundPaddingLeft - view.compoundPaddingRight to view.height - view.compoundPaddingTop - view.compoundPaddingBottom
        check(layout.height <= down + 1) { "$name: its text is ${layout.height} px high in $down px" }
        for (line in 0 until layout.lineCount) {
            check(layout.getLineMax(line) <= across + 1) { "$name: a line is ${layout.getLineMax(line)} px wide in $across px: ${view.text}" }
            check(layout.getEllipsisCount(line) == 0) { "$name is cut: ${view.text}" }
        }
        val parent = view.parent as View
        check(parent is ScrollView || view.bottom <= parent.height + 1) { "$name ends ${view.bottom - parent.height} px below what holds it: ${view.text}" }
        val at = IntArray(2).also(view::getLocationInWindow)
        check(at[0] >= 0 && at[0] + view.width <= view.rootView.width) { "$name reaches out of the screen" }
    }

    /** What a screen reader says; of a field, the text that is its label. */
    private fun said(rig: Rig, view: View): CharSequence =
        view.contentDescription ?: (rig.views().firstOrNull { it.labelFor == view.id && view.id > 0 } as? TextView ?: view as? TextView)?.text ?: ""

    private fun picture(rig: Rig) {
        val folder = System.getProperty("stillbar.screens").orEmpty()
        val screen = rig.shell.screen!!
        val key = { drawn: Boolean -> "${screen.title} ${screen.standing?.word} $drawn ${rig.top() === rig.shell.window.decorView}" }
        val drawn = screen.blocks.any { it is Block.Drawing }
        if (folder.isEmpty() || series.isEmpty() || !pictured.add(key(drawn))) return
        val root = rig.top()
        val bitmap = Bitmap.createBitmap(root.width, root.height, Bitmap.Config.ARGB_8888)
        root.draw(Canvas(bitmap))
        val name = screen.title.lowercase().replace(Regex("[^a-z0-9]+"), "-").trim('-')
        val stop = if (screen.standing?.word.orEmpty().startsWith("Stop")) "-stop" else ""
        val camera = if (root === rig.shell.window.decorView) "" else "-camera"
        // The same title without a drawing is a picture of its own, of the screen before.
        val then = if (drawn && key(false) in pictured) "-drawn" else ""
        val file = File(folder, "$series/$name$stop$then$camera.png")
        file.parentFile!!.mkdirs()
        file.outputStream().use { bitmap.compress(Bitmap.CompressFormat.PNG, 100, it) }
    }
}
