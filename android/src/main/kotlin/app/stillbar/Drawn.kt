package app.stillbar

import android.annotation.SuppressLint
import android.graphics.Canvas
import android.graphics.ColorFilter
import android.graphics.Paint
import android.graphics.PixelFormat
import android.graphics.PointF
import android.graphics.Typeface
import android.graphics.drawable.Drawable
import android.view.MotionEvent
import android.view.View
import app.stillbar.core.Drawing
import app.stillbar.core.Ink
import app.stillbar.core.Shape
import kotlin.math.hypot
import kotlin.math.min
import kotlin.math.roundToInt

/** Paints a drawing of the core as wide as there is room, on a short screen no higher than most of it; larger in steps, moved by a finger. */
class DrawnView(private val style: Style, private val drawing: Drawing) : View(style.context) {
    private var zoom = 1f
    private var middle = PointF(0.5f, 0.5f)
    private var finger: PointF? = null

    /** Wider than this its letters are too small to read on a phone. */
    val wide = drawing.width > 400

    fun zoom(by: Float) {
        zoom = (zoom * by).coerceIn(1f, 4f)
        move(0f, 0f)
    }

    /** Moves what is seen by so many pixels, no further than the drawing's edge. */
    private fun move(across: Float, down: Float) {
        val edge = 0.5f / zoom
        middle.x = (middle.x - across / (width * zoom)).coerceIn(edge, 1 - edge)
        middle.y = (middle.y - down / (height * zoom)).coerceIn(edge, 1 - edge)
        invalidate()
    }

    @SuppressLint("ClickableViewAccessibility") // Moving it does nothing that a screen reader would miss: its words say all of it.
    override fun onTouchEvent(event: MotionEvent): Boolean {
        if (zoom == 1f) return false
        parent.requestDisallowInterceptTouchEvent(true)
        finger?.takeIf { event.actionMasked == MotionEvent.ACTION_MOVE }?.let { move(event.x - it.x, event.y - it.y) }
        finger = PointF(event.x, event.y)
        return true
    }

    private val brush = Brush(style)

    override fun onMeasure(widthSpec: Int, heightSpec: Int) {
        val width = MeasureSpec.getSize(widthSpec)
        val most = resources.displayMetrics.heightPixels * 0.6f
        setMeasuredDimension(width, min(most, width * drawing.height / drawing.width.coerceAtLeast(1f)).roundToInt())
    }

    override fun onDraw(canvas: Canvas) {
        val scale = min(width / drawing.width.coerceAtLeast(1f), height / drawing.height.coerceAtLeast(1f))
        canvas.clipRect(0, 0, width, height)
        canvas.translate(width / 2f - middle.x * width * zoom, height / 2f - middle.y * height * zoom)
        canvas.scale(zoom, zoom)
        canvas.translate((width - drawing.width * scale) / 2, 0f)
        canvas.scale(scale, scale)
        brush.paint(canvas, drawing)
    }
}

/** A drawing beside the words of a button, so many pixels wide; a screen reader reads the words alone. */
class DrawnBeside(style: Style, private val drawing: Drawing, private val width: Int) : Drawable() {
    private val brush = Brush(style)

    override fun getIntrinsicWidth() = width
    override fun getIntrinsicHeight() = (width * drawing.height / drawing.width.coerceAtLeast(1f)).roundToInt()
    override fun setAlpha(alpha: Int) = Unit
    override fun setColorFilter(filter: ColorFilter?) = Unit
    @Deprecated("as Drawable has it") override fun getOpacity() = PixelFormat.TRANSLUCENT

    override fun draw(canvas: Canvas) {
        val scale = min(bounds.width() / drawing.width.coerceAtLeast(1f), bounds.height() / drawing.height.coerceAtLeast(1f))
        canvas.save()
        canvas.translate(bounds.left.toFloat(), bounds.top.toFloat())
        canvas.scale(scale, scale)
        brush.paint(canvas, drawing)
        canvas.restore()
    }
}

/** Paints the shapes of a drawing in its own units. */
private class Brush(private val style: Style) {
    private val pen = Paint(Paint.ANTI_ALIAS_FLAG).apply {
        strokeCap = Paint.Cap.ROUND
        textAlign = Paint.Align.CENTER
        typeface = Typeface.DEFAULT_BOLD
    }

    fun paint(canvas: Canvas, drawing: Drawing) {
        for (shape in drawing.shapes) {
            // A dark conductor on dark paper, or the other way round, is told from it by a rim.
            if (inkOf(shape) in RIMMED) paint(canvas, shape, style.rim, 1f + drawing.width / 200f)
            paint(canvas, shape, style.of(inkOf(shape)), 0f)
        }
    }

    private fun paint(canvas: Canvas, shape: Shape, colour: Int, wider: Float) {
        pen.color = colour
        when (shape) {
            is Shape.Line -> canvas.drawLine(shape.x1, shape.y1, shape.x2, shape.y2, stroke(shape.thick + wider))
            is Shape.Circle -> {
                val out = if (shape.filled) wider / 2 else 0f
                canvas.drawCircle(shape.x, shape.y, shape.r + out, way(shape.filled, shape.thick + wider))
            }
            is Shape.Box -> {
                val out = if (shape.filled) wider / 2 else 0f
                val paint = way(shape.filled, shape.thick + wider)
                canvas.drawRect(shape.x - out, shape.y - out, shape.x + shape.w + out, shape.y + shape.h + out, paint)
            }
            is Shape.Text -> {
                pen.textSize = shape.size
                canvas.drawText(shape.text, shape.x, shape.y, way(wider == 0f, wider))
            }
        }
    }

    private fun way(filled: Boolean, thick: Float) = if (filled) pen.apply { style = Paint.Style.FILL } else stroke(thick)

    private fun stroke(thick: Float) = pen.apply {
        style = Paint.Style.STROKE
        strokeWidth = thick
    }

    private companion object {
        val RIMMED = setOf(Ink.BROWN, Ink.BLACK, Ink.GREY, Ink.BLUE, Ink.GREEN)

        fun inkOf(shape: Shape): Ink = when (shape) {
            is Shape.Line -> shape.ink
            is Shape.Circle -> shape.ink
            is Shape.Box -> shape.ink
            is Shape.Text -> shape.ink
        }
    }
}

/** A place to sign with a finger: strokes `x,y x,y;x,y` on 1000 x 400, as the core keeps them. */
@SuppressLint("ViewConstructor", "ClickableViewAccessibility")
class SignatureView(style: Style, private var strokes: String, private val signed: (String) -> Unit) : View(style.context) {
    private val pen = Paint(Paint.ANTI_ALIAS_FLAG).apply {
        color = style.ink
        strokeWidth = 9f
        strokeCap = Paint.Cap.ROUND
        this.style = Paint.Style.STROKE
    }
    private var last: Pair<Int, Int>? = null

    init {
        background = style.box(style.raised)
    }

    fun clear() {
        strokes = ""
        invalidate()
    }

    override fun onMeasure(widthSpec: Int, heightSpec: Int) {
        val width = MeasureSpec.getSize(widthSpec)
        setMeasuredDimension(width, width * 2 / 5)
    }

    override fun onTouchEvent(event: MotionEvent): Boolean {
        val at = spot(event)
        when (event.actionMasked) {
            MotionEvent.ACTION_DOWN -> {
                // The list behind must not scroll away under the pen.
                parent.requestDisallowInterceptTouchEvent(true)
                if (full()) return false
                strokes += (if (strokes.isEmpty()) "" else ";") + "${at.first},${at.second}"
                last = at
            }
            MotionEvent.ACTION_MOVE -> {
                val before = last ?: return false
                if (full() || hypot((at.first - before.first).toDouble(), (at.second - before.second).toDouble()) < 4) return true
                strokes += " ${at.first},${at.second}"
                last = at
            }
            else -> {
                last = null
                signed(strokes)
            }
        }
        invalidate()
        return true
    }

    override fun onDraw(canvas: Canvas) {
        canvas.scale(width / 1000f, height / 400f)
        for (stroke in strokes.split(';').filter { it.isNotEmpty() }) {
            val points = stroke.split(' ').map { point -> point.split(',').map { it.toFloat() } }
            // A line to its own beginning makes a dot visible.
            (listOf(points[0]) + points).zipWithNext { a, b -> canvas.drawLine(a[0], a[1], b[0], b[1], pen) }
        }
    }

    private fun full() = strokes.count { it == ' ' || it == ';' } >= 4000

    private fun spot(event: MotionEvent): Pair<Int, Int> =
        within(event.x / width, 1000) to within(event.y / height, 400)

    private fun within(share: Float, most: Int) = (min(share, 1f).coerceAtLeast(0f) * most).roundToInt()
}
