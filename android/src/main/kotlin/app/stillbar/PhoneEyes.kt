package app.stillbar

import android.annotation.SuppressLint
import android.content.Context
import android.graphics.ImageFormat
import android.graphics.Matrix
import android.graphics.SurfaceTexture
import android.hardware.camera2.CameraAccessException
import android.hardware.camera2.CameraCaptureSession
import android.hardware.camera2.CameraCharacteristics
import android.hardware.camera2.CameraDevice
import android.hardware.camera2.CameraManager
import android.hardware.camera2.CaptureRequest
import android.media.ImageReader
import android.os.Handler
import android.os.HandlerThread
import android.view.Surface
import android.view.TextureView
import kotlin.math.max

/** The phone's back camera through Camera2. Its callbacks come on a thread of its own. */
class PhoneEyes(private val context: Context) : Eyes {
    private val manager = context.getSystemService(CameraManager::class.java)
    private val id: String? = try {
        val all = manager.cameraIdList
        all.firstOrNull { of(it, CameraCharacteristics.LENS_FACING) == CameraCharacteristics.LENS_FACING_BACK } ?: all.firstOrNull()
    } catch (_: CameraAccessException) {
        // The system's camera service is down: as if there were none.
        null
    }
    private val thread = HandlerThread("camera").apply { start() }
    private val handler = Handler(thread.looper)
    private var device: CameraDevice? = null
    private var session: CameraCaptureSession? = null
    private var reader: ImageReader? = null
    private var preview: Surface? = null
    private var frames = false
    private var lit = false
    private var trouble: (String) -> Unit = {}

    /** Whether a frame is being looked at; those that come meanwhile are let go. */
    @Volatile private var busy = false

    override val hasLight get() = id?.let { of(it, CameraCharacteristics.FLASH_INFO_AVAILABLE) } == true

    override fun open(view: TextureView, frames: Boolean, seen: (Picture) -> Unit, trouble: (String) -> Unit) {
        this.frames = frames
        this.trouble = trouble
        val id = id ?: return trouble("This phone has no camera.")
        val map = of(id, CameraCharacteristics.SCALER_STREAM_CONFIGURATION_MAP) ?: return trouble("The camera gives no pictures.")
        val format = if (frames) ImageFormat.YUV_420_888 else ImageFormat.JPEG
        fun sizes(all: Array<android.util.Size>?) = all.orEmpty().map { it.width to it.height }
        val (width, height) = fitting(sizes(map.getOutputSizes(format)), if (frames) WIDEST_FRAME else WIDEST_PHOTO)
            ?: return trouble("The camera gives no pictures.")
        val (wide, high) = fitting(sizes(map.getOutputSizes(SurfaceTexture::class.java)), WIDEST_FRAME) ?: (width to height)
        reader = ImageReader.newInstance(width, height, format, 2).apply { setOnImageAvailableListener({ take(it, seen) }, handler) }
        whenReady(view) { texture ->
            texture.setDefaultBufferSize(wide, high)
            fit(view, wide, high)
            preview = Surface(texture)
            unlessClosed { connect(id) }
        }
    }

    override fun next() {
        busy = false
    }

    override fun shoot() = handler.on {
        val (device, session, reader) = Triple(device ?: return@on, session ?: return@on, reader ?: return@on)
        val request = device.createCaptureRequest(CameraDevice.TEMPLATE_STILL_CAPTURE)
        request.addTarget(reader.surface)
        request.set(CaptureRequest.CONTROL_AF_MODE, CaptureRequest.CONTROL_AF_MODE_CONTINUOUS_PICTURE)
        // The file says how it was held; its pixels stay as the sensor gave them.
        request.set(CaptureRequest.JPEG_ORIENTATION, upright(of(device.id, CameraCharacteristics.SENSOR_ORIENTATION) ?: 90, turned()))
        request.set(CaptureRequest.JPEG_QUALITY, 92)
        shine(request)
        session.capture(request.build(), null, handler)
    }

    override fun light(on: Boolean) = handler.on {
        lit = on
        watch()
    }

    override fun close() {
        handler.post {
            session?.close()
            device?.close()
            reader?.close()
            preview?.release()
            device = null
            thread.quitSafely()
        }
    }

    private fun take(reader: ImageReader, seen: (Picture) -> Unit) {
        val image = reader.acquireLatestImage() ?: return
        val picture = image.use {
            val plane = it.planes[0]
            when {
                !frames -> Picture.Photo(ByteArray(plane.buffer.remaining()).also(plane.buffer::get))
                busy -> return
                else -> Picture.Luma(it.width, it.height, packed(it.width, it.height, plane.rowStride) { to, at, length, from ->
                    plane.buffer.position(from)
                    plane.buffer.get(to, at, length)
                })
            }
        }
        busy = true
        seen(picture)
    }

    @SuppressLint("MissingPermission") // Errands asks before it opens any eyes.
    private fun connect(id: String) = manager.openCamera(id, object : CameraDevice.StateCallback() {
        override fun onOpened(camera: CameraDevice) = unlessClosed {
            device = camera
            val targets = listOfNotNull(preview, reader?.surface)
            @Suppress("DEPRECATION") // The newer call needs API 28.
            camera.createCaptureSession(targets, object : CameraCaptureSession.StateCallback() {
                override fun onConfigured(made: CameraCaptureSession) = unlessClosed { session = made; watch() }
                override fun onConfigureFailed(made: CameraCaptureSession) = trouble("The camera does not start.")
            }, handler)
        }
        override fun onDisconnected(camera: CameraDevice) = lost(camera, "Another app took the camera.")
        override fun onError(camera: CameraDevice, error: Int) = lost(camera, "The camera failed (error $error).")
    }, handler)

    private fun lost(camera: CameraDevice, why: String) {
        camera.close()
        trouble(why)
    }

    private fun watch() {
        val (device, session, preview) = Triple(device ?: return, session ?: return, preview ?: return)
        val request = device.createCaptureRequest(CameraDevice.TEMPLATE_PREVIEW)
        request.addTarget(preview)
        if (frames) reader?.let { request.addTarget(it.surface) }
        request.set(CaptureRequest.CONTROL_AF_MODE, CaptureRequest.CONTROL_AF_MODE_CONTINUOUS_PICTURE)
        shine(request)
        session.setRepeatingRequest(request.build(), null, handler)
    }

    private fun shine(request: CaptureRequest.Builder) =
        request.set(CaptureRequest.FLASH_MODE, if (lit) CaptureRequest.FLASH_MODE_TORCH else CaptureRequest.FLASH_MODE_OFF)

    /** The whole picture within the view, upright as the phone is held, its sides in proportion. */
    private fun fit(view: TextureView, wide: Int, high: Int) = view.post {
        val turned = turned()
        val (width, height) = view.width.toFloat() to view.height.toFloat()
        val upright = turned % 180 == 0
        val (w, h) = if (upright) high.toFloat() to wide.toFloat() else wide.toFloat() to high.toFloat()
        val scale = minOf(width / max(w, 1f), height / max(h, 1f))
        val matrix = Matrix()
        matrix.setScale(w * scale / width, h * scale / height, width / 2, height / 2)
        if (!upright) {
            // The buffer fills the view on its side: stood up, its sides change places.
            matrix.setScale(h * scale / width, w * scale / height, width / 2, height / 2)
            matrix.postRotate(if (turned == 90) -90f else 90f, width / 2, height / 2)
        }
        view.setTransform(matrix)
    }

    @Suppress("DEPRECATION") // Context.getDisplay needs API 30.
    private fun turned(): Int = 90 * context.getSystemService(android.view.WindowManager::class.java).defaultDisplay.rotation

    private fun whenReady(view: TextureView, ready: (SurfaceTexture) -> Unit) {
        view.surfaceTexture?.let { return ready(it) }
        view.surfaceTextureListener = object : TextureView.SurfaceTextureListener {
            override fun onSurfaceTextureAvailable(made: SurfaceTexture, width: Int, height: Int) = ready(made)
            override fun onSurfaceTextureSizeChanged(texture: SurfaceTexture, width: Int, height: Int) = Unit
            override fun onSurfaceTextureDestroyed(texture: SurfaceTexture) = true
            override fun onSurfaceTextureUpdated(texture: SurfaceTexture) = Unit
        }
    }

    /** A camera can go at any moment: another app takes it, or the person stops. */
    private fun unlessClosed(deed: () -> Unit) = try {
        deed()
    } catch (e: CameraAccessException) {
        trouble("The camera cannot be used now (${e.message}).")
    } catch (_: IllegalStateException) {
        // Closed in the meantime.
    }

    private fun Handler.on(deed: () -> Unit) {
        post { unlessClosed(deed) }
    }

    private fun <T> of(id: String, what: CameraCharacteristics.Key<T>): T? = manager.getCameraCharacteristics(id).get(what)

    private companion object {
        /** Shows a tag at an arm's length; more only takes longer. */
        const val WIDEST_FRAME = 1280
        /** About 12 MP: more pixels tell no more of a label and fill the phone. */
        const val WIDEST_PHOTO = 4096
    }
}
