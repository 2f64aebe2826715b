@preconcurrency import AVFoundation
import StillbarKit

/// The phone's back camera. Its session is set up and run on a queue of its own, as Apple asks; what it sees comes back to the main actor.
@MainActor final class PhoneCamera: Camera {
    let layer: AVCaptureVideoPreviewLayer
    private let session = AVCaptureSession()
    private let queue = DispatchQueue(label: "app.stillbar.camera")
    private let device = AVCaptureDevice.default(.builtInWideAngleCamera, for: .video, position: .back)
    private let photos = AVCapturePhotoOutput()
    private var eye: Eye?
    private var upright: AVCaptureDevice.RotationCoordinator?
    private var turning: NSKeyValueObservation?
    private var notices: [any NSObjectProtocol] = []

    init() {
        layer = AVCaptureVideoPreviewLayer(session: session)
    }

    var hasLight: Bool { device?.hasTorch ?? false }

    func open(frames: Bool, seen: @escaping @MainActor (Picture) async -> Void, trouble: @escaping @MainActor (String) async -> Void) {
        guard let device, let input = try? AVCaptureDeviceInput(device: device) else {
            Task { await trouble(Words.noCamera) }
            return
        }
        let eye = Eye(queue: queue, seen: seen, trouble: trouble)
        self.eye = eye
        watch(device, trouble)
        queue.async { [session, photos] in
            session.beginConfiguration()
            // A frame of 1280 by 720 shows a tag at an arm's length; a photo is as good as the camera gives without being asked (12 MP).
            let preset = frames ? AVCaptureSession.Preset.hd1280x720 : .photo
            if session.canSetSessionPreset(preset) { session.sessionPreset = preset }
            let output: AVCaptureOutput = frames ? eye.frames() : photos
            let fits = session.canAddInput(input) && session.canAddOutput(output)
            if fits {
                session.addInput(input)
                session.addOutput(output)
            }
            session.commitConfiguration()
            if fits { session.startRunning() } else { Task { await trouble(Words.noPicture) } }
        }
    }

    func shoot() {
        // A camera that is not awake yet would end the app; the person taps again.
        guard let eye, session.isRunning, let connection = photos.connection(with: .video), connection.isActive else { return }
        // The file says how it was held; its pixels stay as the sensor gave them.
        if let upright { connection.videoRotationAngle = upright.videoRotationAngleForHorizonLevelCapture }
        photos.capturePhoto(with: AVCapturePhotoSettings(format: [AVVideoCodecKey: AVVideoCodecType.jpeg]), delegate: eye)
    }

    func light(_ on: Bool) {
        guard let device, device.hasTorch, (try? device.lockForConfiguration()) != nil else { return }
        device.torchMode = on ? .on : .off
        device.unlockForConfiguration()
    }

    func close() {
        turning = nil
        notices.forEach { NotificationCenter.default.removeObserver($0) }
        notices = []
        eye = nil
        queue.async { [session] in session.stopRunning() }
    }

    /// Keeps the picture upright, and tells when another app takes the camera. In the background it is the shell that closes it.
    private func watch(_ device: AVCaptureDevice, _ trouble: @escaping @MainActor (String) async -> Void) {
        let upright = AVCaptureDevice.RotationCoordinator(device: device, previewLayer: layer)
        self.upright = upright
        turning = upright.observe(\.videoRotationAngleForHorizonLevelPreview, options: [.initial, .new]) { [weak self] upright, _ in
            let angle = upright.videoRotationAngleForHorizonLevelPreview
            Task { @MainActor in self?.layer.connection?.videoRotationAngle = angle }
        }
        notices.append(NotificationCenter.default.addObserver(forName: .AVCaptureSessionWasInterrupted, object: session, queue: nil) { note in
            let number = note.userInfo?[AVCaptureSessionInterruptionReasonKey] as? Int
            guard number.flatMap(AVCaptureSession.InterruptionReason.init) == .videoDeviceInUseByAnotherClient else { return }
            Task { await trouble(Words.cameraTaken) }
        })
        notices.append(NotificationCenter.default.addObserver(forName: .AVCaptureSessionRuntimeError, object: session, queue: nil) { _ in
            Task { await trouble(Words.noPicture) }
        })
    }
}

/// Takes what the camera gives. Called on its queue.
private final class Eye: NSObject, AVCaptureVideoDataOutputSampleBufferDelegate, AVCapturePhotoCaptureDelegate, @unchecked Sendable {
    private let queue: DispatchQueue
    private let seen: @MainActor (Picture) async -> Void
    private let trouble: @MainActor (String) async -> Void
    /// Whether a frame is being looked at; those that come meanwhile are let go. Touched on the queue only.
    private var busy = false

    init(queue: DispatchQueue, seen: @escaping @MainActor (Picture) async -> Void, trouble: @escaping @MainActor (String) async -> Void) {
        self.queue = queue
        self.seen = seen
        self.trouble = trouble
    }

    func frames() -> AVCaptureVideoDataOutput {
        let output = AVCaptureVideoDataOutput()
        // Two planes, the first of them brightness.
        output.videoSettings = [kCVPixelBufferPixelFormatTypeKey as String: kCVPixelFormatType_420YpCbCr8BiPlanarFullRange]
        output.alwaysDiscardsLateVideoFrames = true
        output.setSampleBufferDelegate(self, queue: queue)
        return output
    }

    func captureOutput(_ output: AVCaptureOutput, didOutput buffer: CMSampleBuffer, from connection: AVCaptureConnection) {
        guard !busy, let image = CMSampleBufferGetImageBuffer(buffer), let picture = luma(image) else { return }
        busy = true
        Task {
            await seen(picture)
            queue.async { self.busy = false }
        }
    }

    func photoOutput(_ output: AVCapturePhotoOutput, didFinishProcessingPhoto photo: AVCapturePhoto, error: (any Error)?) {
        let bytes = photo.fileDataRepresentation()
        Task {
            if let bytes { await seen(.photo(bytes)) } else { await trouble(error?.localizedDescription ?? Words.noPicture) }
        }
    }

    private func luma(_ image: CVPixelBuffer) -> Picture? {
        CVPixelBufferLockBaseAddress(image, .readOnly)
        defer { CVPixelBufferUnlockBaseAddress(image, .readOnly) }
        guard let base = CVPixelBufferGetBaseAddressOfPlane(image, 0) else { return nil }
        let (width, height) = (CVPixelBufferGetWidthOfPlane(image, 0), CVPixelBufferGetHeightOfPlane(image, 0))
        let stride = CVPixelBufferGetBytesPerRowOfPlane(image, 0)
        let plane = UnsafeRawBufferPointer(start: base, count: stride * (height - 1) + width)
        return .luma(width: width, height: height, bytes: packed(width: width, height: height, stride: stride, plane: plane))
    }
}
