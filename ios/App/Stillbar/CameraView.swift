import StillbarKit
import SwiftUI

/// What the camera sees, what to point it at, and the way out.
struct CameraView: View {
    let panel: Panel
    let shell: Shell

    var body: some View {
        VStack(spacing: 8) {
            Finder(camera: panel.camera as? PhoneCamera)
                .accessibilityElement()
                .accessibilityLabel(Words.finder)
            Text(panel.said).accessibilityIdentifier("camera-said")
            if panel.camera.hasLight {
                PressView(label: Words.light) { shell.light() }.accessibilityAddTraits(panel.lit ? .isSelected : [])
            }
            if !panel.scanning { PressView(label: Words.takePhoto) { shell.shoot() } }
            PressView(label: panel.scanning ? Words.stopScanning : Words.takeNone) { await shell.refuse() }
        }
        .padding()
        .background(Color(.paper).ignoresSafeArea())
        .foregroundStyle(Color(.ink))
        .accessibilityAction(.escape) { Task { await shell.refuse() } }
        .onChange(of: panel.said) { AccessibilityNotification.Announcement(panel.said).post() }
    }
}

/// Holds the camera's own layer.
private struct Finder: UIViewRepresentable {
    let camera: PhoneCamera?

    func makeUIView(context: Context) -> Pane {
        let pane = Pane()
        pane.layer.masksToBounds = true
        if let layer = camera?.layer { pane.layer.addSublayer(layer) }
        return pane
    }

    func updateUIView(_ pane: Pane, context: Context) {}

    final class Pane: UIView {
        override func layoutSubviews() {
            super.layoutSubviews()
            layer.sublayers?.forEach { $0.frame = bounds }
        }
    }
}
