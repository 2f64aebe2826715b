package app.stillbar

import android.graphics.Canvas
import android.graphics.ColorFilter
import android.graphics.DashPathEffect
import android.graphics.Paint
import android.graphics.Path
import android.graphics.PixelFormat
import android.graphics.drawable.Drawable
import android.view.View
import app.stillbar.core.StepState
import app.stillbar.core.Tone

/** Drawn signs. Shapes of ISO 3864 where it has one; words beside them say the same, so a screen reader skips them. */
class Sign(private val side: Int, private val ink: Int, private val points: Boolean = false, private val draw: Sign.(Canvas) -> Unit) : Drawable() {
    private val pen = Paint(Paint.ANTI_ALIAS_FLAG).apply {
        strokeCap = Paint.Cap.ROUND
        strokeJoin = Paint.Join.ROUND
    }

    override fun getIntrinsicWidth() = side
    override fun getIntrinsicHeight() = side
    override fun setAlpha(alpha: Int) = Unit
    override fun setColorFilter(filter: ColorFilter?) = Unit
    @Deprecated("as Drawable has it") override fun getOpacity() = PixelFormat.TRANSLUCENT

    override fun draw(canvas: Canvas) {
        val box = bounds
        canvas.save()
        canvas.translate(box.left.toFloat(), box.top.toFloat())
        canvas.scale(box.width() / 100f, box.height() / 100f)
        // What points along the line of reading turns with it.
        if (points && layoutDirection == View.LAYOUT_DIRECTION_RTL) canvas.scale(-1f, 1f, 50f, 50f)
        draw(this, canvas)
        canvas.restore()
    }

    private fun line(colour: Int = ink, thick: Float = 11f): Paint = pen.apply {
        style = Paint.Style.STROKE
        strokeWidth = thick
        color = colour
        pathEffect = null
    }

    private fun solid(colour: Int = ink): Paint = pen.apply {
        style = Paint.Style.FILL
        color = colour
    }

    private fun square(canvas: Canvas, from: Float, paint: Paint) =
        canvas.drawRoundRect(from, from, 100 - from, 100 - from, 8f, 8f, paint)

    companion object {
        fun of(tone: Tone, side: Int, ink: Int): Sign = Sign(side, ink) { canvas ->
            when (tone) {
                Tone.WARN -> warn(canvas)
                Tone.FORBID -> forbid(canvas)
                Tone.MUST -> must(canvas)
                Tone.PLAIN -> kept(canvas)
                Tone.QUIET -> square(canvas, 22f, line())
            }
        }

        /** Nothing is ticked: a full box holds its proof, an empty one does not yet. */
        fun of(state: StepState, side: Int, ink: Int): Sign = Sign(side, ink) { canvas ->
            when (state) {
                StepState.DONE -> kept(canvas)
                StepState.NOW -> canvas.drawPath(closed(14, 10, 48, 10, 88, 50, 48, 90, 14, 90, 48, 50), solid())
                StepState.OPEN -> square(canvas, 12f, line())
                StepState.LATER -> square(canvas, 16f, line(thick = 8f).apply { pathEffect = DASHES })
                StepState.DEVIATED -> {
                    canvas.drawPath(closed(50, 8, 92, 50, 50, 92, 8, 50), line())
                    canvas.drawPath(closed(50, 8, 50, 92, 8, 50), solid())
                }
                StepState.STOP -> forbid(canvas)
            }
        }

        fun back(side: Int, ink: Int): Sign = Sign(side, ink, points = true) { it.drawPath(open(62, 14, 26, 50, 62, 86), line()) }

        fun onward(side: Int, ink: Int): Sign = Sign(side, ink, points = true) { it.drawPath(open(38, 14, 74, 50, 38, 86), line()) }

        fun camera(side: Int, ink: Int): Sign = Sign(side, ink) {
            it.drawPath(closed(8, 28, 30, 28, 39, 15, 61, 15, 70, 28, 92, 28, 92, 86, 8, 86), line())
            it.drawCircle(50f, 56f, 17f, line())
        }

        private val DASHES = DashPathEffect(floatArrayOf(10f, 17f), 0f)

        private fun Sign.kept(canvas: Canvas) {
            square(canvas, 12f, line())
            square(canvas, 28f, solid())
        }

        private fun Sign.warn(canvas: Canvas) {
            val triangle = closed(50, 7, 96, 89, 4, 89)
            canvas.drawPath(triangle, line(Style.BLACK, 7f))
            canvas.drawPath(triangle, solid(Style.YELLOW))
            canvas.drawPath(closed(46, 35, 54, 35, 52, 65, 48, 65), solid(Style.BLACK))
            canvas.drawCircle(50f, 76f, 5.5f, solid(Style.BLACK))
        }

        private fun Sign.forbid(canvas: Canvas) {
            canvas.drawCircle(50f, 50f, 50f, solid(Style.WHITE))
            canvas.drawCircle(50f, 50f, 38f, line(Style.RED, 13f))
            canvas.drawLine(22.4f, 22.4f, 77.6f, 77.6f, line(Style.RED, 13f))
        }

        private fun Sign.must(canvas: Canvas) {
            canvas.drawCircle(50f, 50f, 46f, solid(Style.BLUE))
            canvas.drawCircle(50f, 50f, 46f, line(Style.WHITE, 4f))
            canvas.drawPath(closed(44, 20, 56, 20, 53, 62, 47, 62), solid(Style.WHITE))
            canvas.drawCircle(50f, 76f, 6.5f, solid(Style.WHITE))
        }

        private fun open(vararg at: Int): Path = Path().apply {
            moveTo(at[0].toFloat(), at[1].toFloat())
            for (i in 2 until at.size step 2) lineTo(at[i].toFloat(), at[i + 1].toFloat())
        }

        private fun closed(vararg at: Int): Path = open(*at).apply { close() }
    }
}
