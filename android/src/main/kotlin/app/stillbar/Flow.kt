package app.stillbar

import android.content.Context
import android.view.View
import android.view.ViewGroup
import android.widget.CompoundButton
import kotlin.math.max
import kotlin.math.min

/**
 * Children side by side in columns of equal width, as many as their words have room in and no more than `most`; lines begin where the
 * script begins.
 */
class Flow(context: Context, private val gap: Int, private val least: Int, private val most: Int = Int.MAX_VALUE) : ViewGroup(context) {
    private var columns = 1

    /** The tiles in it that can be chosen. */
    val marks: List<CompoundButton> get() = children().filterIsInstance<CompoundButton>()

    override fun onMeasure(widthSpec: Int, heightSpec: Int) {
        val width = MeasureSpec.getSize(widthSpec)
        val free = MeasureSpec.makeMeasureSpec(0, MeasureSpec.UNSPECIFIED)
        val shown = children()
        val widest = shown.maxOfOrNull { it.measure(free, free); it.measuredWidth } ?: 0
        columns = ((width + gap) / (max(widest, least) + gap)).coerceIn(1, max(1, min(most, shown.size)))
        val exact = MeasureSpec.makeMeasureSpec((width - gap * (columns - 1)) / columns, MeasureSpec.EXACTLY)
        val heights = shown.chunked(columns).map { row ->
            row.forEach { it.measure(exact, free) }
            val high = row.maxOf { it.measuredHeight }
            val all = MeasureSpec.makeMeasureSpec(high, MeasureSpec.EXACTLY)
            row.forEach { it.measure(exact, all) }
            high
        }
        setMeasuredDimension(width, heights.sum() + gap * max(0, heights.size - 1))
    }

    override fun onLayout(changed: Boolean, l: Int, t: Int, r: Int, b: Int) {
        var top = 0
        for (row in children().chunked(columns)) {
            row.forEachIndexed { i, child ->
                val from = i * (child.measuredWidth + gap)
                val left = if (layoutDirection == LAYOUT_DIRECTION_RTL) width - from - child.measuredWidth else from
                child.layout(left, top, left + child.measuredWidth, top + child.measuredHeight)
            }
            top += row.maxOf { it.measuredHeight } + gap
        }
    }

    private fun children(): List<View> = (0 until childCount).map { getChildAt(it) }.filter { it.visibility != GONE }
}
