package app.stillbar

import android.graphics.Bitmap
import android.text.Editable
import android.text.InputFilter
import android.text.InputType
import android.text.TextWatcher
import android.util.TypedValue
import android.view.Gravity
import android.view.View
import android.view.ViewGroup.LayoutParams.WRAP_CONTENT
import android.view.accessibility.AccessibilityNodeInfo
import android.widget.Button
import android.widget.CheckBox
import android.widget.CompoundButton
import android.widget.EditText
import android.widget.ImageView
import android.widget.LinearLayout
import android.widget.RadioButton
import android.widget.TextView
import app.stillbar.core.Block
import app.stillbar.core.Choice
import app.stillbar.core.Entry
import app.stillbar.core.EntryKind
import app.stillbar.core.Opt
import app.stillbar.core.Pad
import app.stillbar.core.PhotoSlot
import app.stillbar.core.Row
import app.stillbar.core.Screen
import app.stillbar.core.Standing
import app.stillbar.core.StepRow
import app.stillbar.core.StepState
import app.stillbar.core.Tone
import app.stillbar.core.Button as Pressed

/** What a screen needs from whoever shows it. */
interface Host {
    fun act(action: String)
    fun picture(sha256: String, show: (Bitmap) -> Unit)
}

/** Draws the blocks of a screen, one method a kind. Knows nothing of what they say. */
class Render(private val style: Style, private val form: Form, private val host: Host) {
    private val context get() = style.context

    fun blocks(screen: Screen): List<View> = screen.blocks.map(::block)

    fun title(screen: Screen): View = heading("title", style.text(screen.title, 28f, bold = true))

    fun standing(standing: Standing): View {
        val (fill, ink) = style.filled(standing.tone) ?: (style.raised to style.ink)
        val said = style.column(style.dp(2), style.text(standing.word, 21f, true, ink), style.text(standing.text, 18f, false, ink))
        val bar = signed(Sign.of(standing.tone, style.dp(44), ink), said).named("standing", "${standing.word}. ${standing.text}")
        bar.setBackgroundColor(fill)
        bar.pad(style.dp(16), style.dp(10))
        val deviations = standing.deviations.map { text ->
            signed(Sign.of(StepState.DEVIATED, style.dp(24), style.ink), style.text(text)).apply { pad(style.dp(16), style.dp(4)) }
        }
        return style.column(0, *(listOf(bar) + deviations).toTypedArray()).apply { setBackgroundColor(style.raised) }
    }

    fun notice(tone: Tone, text: String): View {
        val (fill, ink) = style.filled(tone).takeIf { tone != Tone.WARN } ?: (style.raised to style.ink)
        val box = signed(Sign.of(tone, style.dp(32), ink), style.text(text, colour = ink)).named("notice", text)
        box.background = style.box(fill, if (tone == Tone.WARN) Style.YELLOW else style.line, 3)
        box.pad(style.dp(12), style.dp(8))
        // Said at once by a screen reader.
        box.accessibilityLiveRegion = View.ACCESSIBILITY_LIVE_REGION_ASSERTIVE
        return box
    }

    fun up(button: Pressed): View = button(button).apply {
        setCompoundDrawablesRelativeWithIntrinsicBounds(Sign.back(style.dp(24), style.ink), null, null, null)
    }

    fun main(button: Pressed): View = button(button).apply {
        val (fill, ink) = style.filled(button.tone) ?: if (button.tone == Tone.QUIET) style.paper to style.ink else style.ink to style.paper
        setTextSize(TypedValue.COMPLEX_UNIT_SP, 21f)
        setTextColor(ink)
        background = style.pressable(style.box(fill, style.ink, 3))
        minimumHeight = style.dp(64)
    }

    private fun block(block: Block): View = when (block) {
        is Block.Heading -> heading(block.id, style.text(block.text, 21f, bold = true))
        is Block.Paragraph -> style.text(block.text).named(block.id)
        is Block.Caution -> caution(block.id, block.tone, block.text)
        is Block.Fact -> fact(block.id, block.label, block.value)
        is Block.Step -> step(block.id, block.step)
        is Block.Choice -> choice(block.id, block.choice)
        is Block.Entry -> entry(block.id, block.entry)
        is Block.Pad -> pad(block.id, block.pad)
        is Block.Photo -> photo(block.id, block.photo)
        is Block.Drawing -> drawing(block)
        is Block.Table -> table(block.id, block.caption, block.head, block.rows)
        is Block.Button -> button(block.button)
        is Block.Mark -> mark(block)
    }

    private fun drawing(block: Block.Drawing): View {
        val view = DrawnView(style, block.drawing).named(block.id, block.label)
        if (!view.wide) return view
        val steps = listOf("Smaller" to 1 / 1.6f, "Larger" to 1.6f).map { (word, by) ->
            style.button("${block.id}:${word.lowercase()}", word, Tone.QUIET) { view.zoom(by) }
        }
        return style.column(style.gap, view, *steps.toTypedArray())
    }

    private fun caution(id: String, tone: Tone, text: String): View {
        val word = when (tone) {
            Tone.WARN -> "Warning"
            Tone.FORBID -> "Stop"
            Tone.MUST -> "Must do"
            Tone.PLAIN, Tone.QUIET -> "Note"
        }
        val (fill, ink) = style.filled(tone).takeIf { tone != Tone.WARN } ?: (style.raised to style.ink)
        val said = style.column(0, style.text(word, 20f, true, ink), style.text(text, colour = ink))
        val box = signed(Sign.of(tone, style.dp(44), ink), said).named(id, "$word. $text")
        box.background = style.box(fill, if (tone == Tone.WARN) Style.YELLOW else ink, 3)
        box.pad(style.dp(12), style.dp(12))
        return box
    }

    private fun fact(id: String, label: String, value: String): View {
        val box = style.column(0, style.text(label, 16f, colour = style.faint), style.text(value, bold = true)).named(id, "$label: $value")
        box.background = style.box(rim = style.line, thick = 1)
        box.pad(style.dp(12), style.dp(8))
        return box
    }

    private fun step(id: String, step: StepRow): View {
        val head = style.text(listOf(step.number, step.title).filter { it.isNotEmpty() }.joinToString(" "), bold = true)
        val lines = (listOf(step.word).filter { it.isNotEmpty() } + step.lines).map { style.text(it, 16f, colour = style.faint) }
        val opens = step.action.isNotEmpty()
        val sign = if (step.word.isEmpty()) null else Sign.of(step.state, style.dp(32), style.ink)
        val row = signed(sign, style.column(style.dp(2), head, *lines.toTypedArray()))
        if (opens) row.addView(image(Sign.onward(style.dp(24), style.ink)))
        row.named(id, (listOf(head.text, step.word) + step.lines).filter { it.isNotEmpty() }.joinToString(". "))
        row.pad(style.dp(12), style.dp(10))
        row.minimumHeight = style.target
        if (opens) {
            row.background = style.pressable(style.box(style.raised, if (step.state == StepState.NOW) style.ink else style.line, if (step.state == StepState.NOW) 5 else 2))
            row.setOnClickListener { host.act(step.action) }
        }
        return row
    }

    private fun choice(id: String, choice: Choice): View {
        val tiles = tiles(id, choice.options, choice.chosen, choice.many) { form.pick(choice.field, it) }
        return style.column(style.dp(8), style.text(choice.label, bold = true), tiles).named(id)
    }

    /** Answers as tiles; one that is chosen has a thick rim and its mark filled. */
    private fun tiles(id: String, options: List<Opt>, chosen: List<String>, many: Boolean, picked: (List<String>) -> Unit): Flow {
        // Two drawings side by side can be compared; more of them are too small.
        val flow = Flow(context, style.dp(8), style.dp(96), if (options.any { it.drawing != null }) 2 else Int.MAX_VALUE)
        val marks = LinkedHashMap<CompoundButton, Opt>()
        fun look(mark: CompoundButton, tone: Tone) {
            val rim = if (mark.isChecked) style.filled(tone)?.first ?: style.ink else style.line
            mark.background = style.pressable(style.box(style.raised, rim, if (mark.isChecked) 5 else 2))
        }
        options.forEachIndexed { i, option ->
            val mark: CompoundButton = if (many) CheckBox(context) else RadioButton(context)
            marks[mark] = option
            mark.text = option.label
            mark.setTextColor(style.ink)
            mark.setTextSize(TypedValue.COMPLEX_UNIT_SP, 18f)
            mark.buttonTintList = android.content.res.ColorStateList.valueOf(style.ink)
            mark.minimumHeight = style.target
            mark.pad(style.dp(10), style.dp(8))
            option.drawing?.let { beside(mark, DrawnBeside(style, it, style.dp(136))) }
            mark.isChecked = option.value in chosen
            look(mark, option.tone)
            mark.setOnCheckedChangeListener { _, on ->
                if (on && !many) marks.keys.filter { it !== mark }.forEach { it.isChecked = false }
                look(mark, option.tone)
                if (on || many) picked(marks.filterKeys { it.isChecked }.values.map { it.value })
            }
            flow.addView(mark.named("$id:$i"))
        }
        return flow
    }

    /** A drawing between the mark and the words, or above them where letters are large and the words need the width. */
    private fun beside(mark: CompoundButton, drawn: DrawnBeside) {
        val large = context.resources.configuration.run { screenWidthDp < 340 * fontScale }
        mark.setCompoundDrawablesRelativeWithIntrinsicBounds(if (large) null else drawn, if (large) drawn else null, null, null)
        mark.compoundDrawablePadding = style.dp(8)
    }

    private fun entry(id: String, entry: Entry): View {
        val field = field(id, entry.value, entry.limit.toInt(), entry.kind) { form.type(entry.field, it) }
        val label = style.text(entry.label, bold = true).apply { labelFor = field.id }
        val hint = entry.hint.takeIf { it.isNotEmpty() }?.let { style.text(it, 16f, colour = style.faint) }
        return style.column(style.dp(4), *listOfNotNull(label, hint, field).toTypedArray())
    }

    private fun field(id: String, value: String, limit: Int, kind: EntryKind, typed: (String) -> Unit) = EditText(context).apply {
        this.id = View.generateViewId()
        filters = arrayOf(InputFilter.LengthFilter(limit))
        setText(value)
        setTextColor(style.ink)
        setTextSize(TypedValue.COMPLEX_UNIT_SP, 18f)
        inputType = when (kind) {
            EntryKind.TEXT -> InputType.TYPE_CLASS_TEXT or InputType.TYPE_TEXT_FLAG_CAP_SENTENCES
            EntryKind.LONG ->
                InputType.TYPE_CLASS_TEXT or InputType.TYPE_TEXT_FLAG_CAP_SENTENCES or InputType.TYPE_TEXT_FLAG_MULTI_LINE
            EntryKind.NUMBER -> InputType.TYPE_CLASS_NUMBER or InputType.TYPE_NUMBER_FLAG_DECIMAL
            EntryKind.TELEPHONE -> InputType.TYPE_CLASS_PHONE
            EntryKind.PIN -> InputType.TYPE_CLASS_NUMBER or InputType.TYPE_NUMBER_VARIATION_PASSWORD
        }
        background = style.box(style.raised)
        minimumHeight = style.target
        pad(style.dp(12), style.dp(8))
        addTextChangedListener(Typed(typed))
        // The drafts of the core bring the text back; the view's own memory could only contradict them.
        isSaveEnabled = false
    }.named(id)

    private fun pad(id: String, pad: Pad): View {
        val rows = pad.rows.mapIndexed { i, row ->
            val answered = pad.options.any { it.value == row.chosen }
            val name = "$id:$i"
            val parts = mutableListOf<View>(style.text(row.label, 20f, bold = true), style.text(row.hint, 16f, colour = style.faint))
            var volts: EditText? = null
            val clash = style.text("The number counts. Empty it to choose an answer instead.").named("$name:clash")
            clash.visibility = View.GONE
            clash.accessibilityLiveRegion = View.ACCESSIBILITY_LIVE_REGION_ASSERTIVE
            lateinit var tiles: Flow
            // Beside a number no answer looks chosen, and none replaces it by a slip of the thumb.
            fun settle(clashes: Boolean) {
                val number = !volts?.text.isNullOrBlank()
                clash.visibility = if (number && clashes) View.VISIBLE else View.GONE
                if (!number) return
                tiles.marks.forEach { it.isChecked = false }
                form.pick(row.field, emptyList())
            }
            tiles = tiles(name, pad.options, listOf(row.chosen), false) { form.pick(row.field, it); settle(clashes = true) }
            if (pad.options.isNotEmpty()) parts += tiles
            if (pad.volts) {
                val number = field("$name:volts", if (answered) "" else row.chosen, 12, EntryKind.NUMBER) { form.type(row.field, it); settle(clashes = false) }
                parts += style.text("${row.label}, volts", 16f).apply { labelFor = number.id }
                parts += number
                parts += clash
                volts = number
            }
            style.column(style.dp(6), *parts.toTypedArray()).named(name).apply {
                background = style.box()
                pad(style.dp(12), style.dp(10))
            }
        }
        return style.column(style.dp(10), heading(id, style.text(pad.label, 20f, bold = true)), *rows.toTypedArray())
    }

    private fun photo(id: String, slot: PhotoSlot): View {
        val parts = mutableListOf<View>()
        if (slot.action.isEmpty()) {
            parts += style.text(slot.label, bold = true)
        } else {
            val shutter = button(Pressed("$id:take", slot.label, slot.action, Tone.PLAIN))
            shutter.setCompoundDrawablesRelativeWithIntrinsicBounds(Sign.camera(style.dp(40), style.ink), null, null, null)
            parts += shutter
        }
        if (slot.hint.isNotEmpty()) parts += style.text(slot.hint, 16f, colour = style.faint)
        val taken = Flow(context, style.dp(8), style.dp(140))
        for (seen in slot.taken) {
            val view = ImageView(context)
            view.scaleType = ImageView.ScaleType.CENTER_CROP
            view.minimumHeight = style.dp(105)
            view.background = style.box(style.raised)
            taken.addView(view.named("$id:${seen.sha256}", seen.label))
            host.picture(seen.sha256, view::setImageBitmap)
        }
        return style.column(style.dp(8), *parts.toTypedArray(), taken).named(id)
    }

    /** A card a row: a phone has no room for columns of words. */
    private fun table(id: String, caption: String, head: List<String>, rows: List<Row>): View {
        val cards = rows.mapIndexed { i, row ->
            val said = row.cells.mapIndexed { at, cell -> listOf(head.getOrElse(at) { "" }, cell).filter { it.isNotEmpty() }.joinToString(": ") }
            val lines = said.mapIndexed { at, text -> style.text(if (at == 0) row.cells[0] else text, if (at == 0) 18f else 16f, bold = at == 0) }
            style.column(style.dp(2), *lines.toTypedArray()).named("$id:$i", said.joinToString(". ")).apply {
                background = style.box(thick = 1)
                pad(style.dp(12), style.dp(8))
            }
        }
        return style.column(style.dp(6), heading(id, style.text(caption, 20f, bold = true)), *cards.toTypedArray())
    }

    private fun mark(block: Block.Mark): View {
        var strokes = block.value.takeUnless { it.startsWith(TYPED) }.orEmpty()
        var name = block.value.removePrefix(TYPED).takeIf { block.value.startsWith(TYPED) }.orEmpty()
        // What was drawn counts; what was typed stands in for it.
        fun keep() = form.type(block.field, strokes.ifEmpty { if (name.isBlank()) "" else TYPED + name.trim() })
        val drawn = SignatureView(style, strokes) { strokes = it; keep() }
        drawn.named(block.id, block.label)
        val clear = style.button("${block.id}:clear", "Clear", Tone.QUIET) { drawn.clear(); strokes = ""; keep() }
        val typed = field("${block.id}:typed", name, 120, EntryKind.TEXT) { name = it; keep() }
        val or = style.text("or type your full name").apply { labelFor = typed.id }
        return style.column(style.dp(8), style.text(block.label, bold = true), drawn, clear, or, typed)
    }

    private fun button(button: Pressed): Button = style.button(button.id, button.label, button.tone) { host.act(button.action) }

    private fun heading(id: String, text: TextView): View {
        text.named(id)
        if (android.os.Build.VERSION.SDK_INT >= 28) text.isAccessibilityHeading = true
        return text
    }

    private fun signed(sign: Sign?, said: View): LinearLayout = LinearLayout(context).apply {
        gravity = Gravity.CENTER_VERTICAL
        if (sign != null) addView(image(sign))
        addView(said, LinearLayout.LayoutParams(0, WRAP_CONTENT, 1f).apply { if (sign != null) marginStart = style.dp(12) })
    }

    private fun image(sign: Sign) = ImageView(context).apply {
        setImageDrawable(sign)
        importantForAccessibility = View.IMPORTANT_FOR_ACCESSIBILITY_NO
    }

    private companion object {
        /** The value of a signature that was typed begins so; a drawn one is all figures. */
        const val TYPED = "typed:"
    }
}

/** Calls back after each change by hand. */
private class Typed(private val typed: (String) -> Unit) : TextWatcher {
    override fun beforeTextChanged(s: CharSequence, start: Int, count: Int, after: Int) = Unit
    override fun onTextChanged(s: CharSequence, start: Int, before: Int, count: Int) = Unit
    override fun afterTextChanged(s: Editable) = typed(s.toString())
}

/**
 * Gives a view its stable id, which accessibility services and tests find it by, and, if its parts are to be read as one,
 * what a screen reader says for all of them.
 */
fun <V : View> V.named(id: String, said: String? = null): V = apply {
    tag = id
    if (said != null) {
        contentDescription = said
        if (this is LinearLayout) for (i in 0 until childCount) {
            getChildAt(i).importantForAccessibility = View.IMPORTANT_FOR_ACCESSIBILITY_NO_HIDE_DESCENDANTS
        }
        if (this is LinearLayout && android.os.Build.VERSION.SDK_INT >= 28) isScreenReaderFocusable = true
    }
    accessibilityDelegate = object : View.AccessibilityDelegate() {
        override fun onInitializeAccessibilityNodeInfo(host: View, info: AccessibilityNodeInfo) {
            super.onInitializeAccessibilityNodeInfo(host, info)
            info.viewIdResourceName = "app.stillbar:id/$id"
            if (host is LinearLayout && host.isClickable) info.className = Button::class.java.name
        }
    }
}
