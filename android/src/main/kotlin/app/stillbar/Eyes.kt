package app.stillbar

import android.view.TextureView

/** What a camera gives. */
sealed interface Picture {
    /** Brightness, row by row without gaps. */
    class Luma(val width: Int, val height: Int, val bytes: ByteArray) : Picture

    /** A whole photo as the camera wrote it. */
    class Photo(val bytes: ByteArray) : Picture
}

/** A camera: the phone's, or one of the tests. */
interface Eyes {
    /**
     * Opens it and shows its picture in `view`. With `frames`, brightness is given to `seen` again and again, the next one
     * after [next]; otherwise one photo comes after [shoot]. `trouble` is a sentence for the person, and the end.
     */
    fun open(view: TextureView, frames: Boolean, seen: (Picture) -> Unit, trouble: (String) -> Unit)
    fun next()
    fun shoot()

    /** Whether there is a light to switch. */
    val hasLight: Boolean
    fun light(on: Boolean)
    fun close()
}

/** The rows of a plane whose rows are `stride` bytes apart, put together. The last row may end early. */
fun packed(width: Int, height: Int, stride: Int, read: (ByteArray, at: Int, length: Int, from: Int) -> Unit): ByteArray {
    val bytes = ByteArray(width * height)
    if (stride == width) read(bytes, 0, bytes.size, 0) else for (row in 0 until height) read(bytes, row * width, width, row * stride)
    return bytes
}

/** Of the sizes that a camera has, the largest that is neither wider than `most` nor without pixels; the smallest if all are. */
fun fitting(sizes: List<Pair<Int, Int>>, most: Int): Pair<Int, Int>? {
    val by = compareBy<Pair<Int, Int>> { it.first.toLong() * it.second }
    return sizes.filter { maxOf(it.first, it.second) <= most }.maxWithOrNull(by) ?: sizes.minWithOrNull(by)
}

/** How far a photo is to be turned clockwise, in degrees, so that it stands upright: `CameraCharacteristics.SENSOR_ORIENTATION`. */
fun upright(sensor: Int, display: Int): Int = (sensor - display + 360) % 360
