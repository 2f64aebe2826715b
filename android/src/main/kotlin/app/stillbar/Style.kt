package app.stillbar

import android.content.Context
import android.content.res.ColorStateList
import android.content.res.Configuration
import android.graphics.Typeface
import android.graphics.drawable.Drawable
import android.graphics.drawable.GradientDrawable
import android.graphics.drawable.RippleDrawable
import android.util.TypedValue
import android.view.View
import android.view.ViewGroup.LayoutParams.MATCH_PARENT
import android.view.ViewGroup.LayoutParams.WRAP_CONTENT
import android.widget.Button
import android.widget.LinearLayout
import android.widget.TextView
import app.stillbar.core.Ink
import app.stillbar.core.Tone

/** Colours and sizes: large targets for gloves. Yellow, red and blue have their ISO 3864 meaning and no other. */
class Style(val context: Context) {
    private val dark =
        context.resources.configuration.uiMode and Configuration.UI_MODE_NIGHT_MASK == Configuration.UI_MODE_NIGHT_YES
    val paper = if (dark) 0xFF14120D.toInt() else 0xFFFBF8F0.toInt()
    val raised = if (dark) 0xFF24211A.toInt() else 0xFFEDE8DB.toInt()
    val ink = if (dark) 0xFFF7F2E6.toInt() else 0xFF16140F.toInt()
    val faint = if (dark) 0xFFCDC6B6.toInt() else 0xFF46423A.toInt()
    val line = if (dark) 0xFF958D7C.toInt() else 0xFF777061.toInt()
    val rim = if (dark) ink else paper
    val target = dp(56)
    val gap = dp(12)

    fun dp(size: Number): Int = (size.toFloat() * context.resources.displayMetrics.density + 0.5f).toInt()

    /** What a thing of this tone is filled with, and what is written on it; null for what has no colour of its own. */
    fun filled(tone: Tone): Pair<Int, Int>? = when (tone) {
        Tone.WARN -> YELLOW to BLACK
        Tone.FORBID -> RED to WHITE
        Tone.MUST -> BLUE to WHITE
        Tone.PLAIN, Tone.QUIET -> null
    }

    /** IEC 60445 conductor colours are the same on any paper. */
    fun of(ink: Ink): Int = when (ink) {
        Ink.INK -> this.ink
        Ink.PAPER -> paper
        Ink.QUIET -> faint
        Ink.WARN -> YELLOW
        Ink.FORBID -> 0xFFC23B36.toInt()
        Ink.MUST -> 0xFF2A7FB8.toInt()
        Ink.BROWN -> 0xFF7A4A24.toInt()
        Ink.BLACK -> 0xFF101010.toInt()
        Ink.GREY -> 0xFF8C9095.toInt()
        Ink.BLUE -> 0xFF2F74C9.toInt()
        Ink.GREEN -> 0xFF2E7D3C.toInt()
        Ink.YELLOW -> 0xFFF2C500.toInt()
        Ink.DARK -> 0xFF000000.toInt()
        Ink.LIGHT -> WHITE
    }

    fun text(said: String, size: Float = 18f, bold: Boolean = false, colour: Int = ink) = TextView(context).apply {
        text = said
        setTextColor(colour)
        setTextSize(TypedValue.COMPLEX_UNIT_SP, size)
        if (bold) typeface = Typeface.DEFAULT_BOLD
        // By the direction of its own script, as the rest of the screen goes by that of the phone.
        textAlignment = View.TEXT_ALIGNMENT_VIEW_START
    }

    fun box(fill: Int = paper, rim: Int = line, thick: Number = 2): GradientDrawable = GradientDrawable().apply {
        setColor(fill)
        setStroke(dp(thick), rim)
        cornerRadius = dp(8).toFloat()
    }

    /** One below the other. */
    fun column(gap: Int, vararg parts: View): LinearLayout = LinearLayout(context).apply {
        orientation = LinearLayout.VERTICAL
        parts.forEachIndexed { i, part ->
            addView(part, LinearLayout.LayoutParams(MATCH_PARENT, WRAP_CONTENT).apply { topMargin = if (i == 0) 0 else gap })
        }
    }

    fun button(id: String, label: String, tone: Tone = Tone.PLAIN, pressed: () -> Unit): Button = Button(context).apply {
        text = label
        isAllCaps = false
        setTextSize(TypedValue.COMPLEX_UNIT_SP, 18f)
        val (fill, colour) = filled(tone) ?: (paper to ink)
        setTextColor(colour)
        background = pressable(if (tone == Tone.QUIET) box(fill) else box(fill, ink, 3))
        if (filled(tone) != null) setCompoundDrawablesRelativeWithIntrinsicBounds(Sign.of(tone, dp(26), colour), null, null, null)
        compoundDrawablePadding = dp(8)
        minimumHeight = target
        minHeight = target
        pad(dp(16), dp(8))
        stateListAnimator = null
        setOnClickListener { pressed() }
    }.named(id)

    fun pressable(box: Drawable): Drawable = RippleDrawable(ColorStateList.valueOf(line), box, null)

    companion object {
        const val YELLOW = 0xFFF9A800.toInt()
        const val RED = 0xFF9B2423.toInt()
        const val BLUE = 0xFF005387.toInt()
        const val BLACK = 0xFF14120D.toInt()
        const val WHITE = -1
    }
}

/** Space inside, the same on the side where a line begins and where it ends. */
fun View.pad(across: Int, down: Int) = setPaddingRelative(across, down, across, down)
