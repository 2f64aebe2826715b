import AVFoundation
import Network
import StillbarKit
import UIKit

/// Rings, shares and buzzes; lends its camera.
final class ThisPhone: Phone {
    private let link = NWPathMonitor()

    init() { link.start(queue: .global(qos: .utility)) }

    var hasFreeLink: Bool {
        let path = link.currentPath
        return path.status == .satisfied && !path.isExpensive && !path.isConstrained
    }

    func ring(_ number: String) {
        // A tablet without a telephone does nothing: the number is on the screen.
        guard let url = URL(string: "tel:" + number.filter { "+0123456789".contains($0) }) else { return }
        UIApplication.shared.open(url)
    }

    func share(title: String, text: String) { present([Message(title: title, text: text)]) }

    func share(title: String, file: URL) { present([file]) }

    private func present(_ items: [Any]) {
        let scenes = UIApplication.shared.connectedScenes.compactMap { $0 as? UIWindowScene }
        guard let root = scenes.first?.keyWindow?.rootViewController else { return }
        let sheet = UIActivityViewController(activityItems: items, applicationActivities: nil)
        // On a tablet it needs a place to point at.
        sheet.popoverPresentationController?.sourceView = root.view
        sheet.popoverPresentationController?.sourceRect = CGRect(x: root.view.bounds.midX, y: root.view.bounds.maxY, width: 0, height: 0)
        root.present(sheet, animated: true)
    }

    func buzz() { UINotificationFeedbackGenerator().notificationOccurred(.warning) }

    func mayUseCamera() async -> Bool { await AVCaptureDevice.requestAccess(for: .video) }

    func camera() -> any Camera { PhoneCamera() }
}

/// A text with a subject, for those ways of sending that have one.
private final class Message: NSObject, UIActivityItemSource {
    private let title: String
    private let text: String

    init(title: String, text: String) {
        self.title = title
        self.text = text
    }

    func activityViewControllerPlaceholderItem(_ controller: UIActivityViewController) -> Any { text }

    func activityViewController(_ controller: UIActivityViewController, itemForActivityType type: UIActivity.ActivityType?) -> Any? { text }

    func activityViewController(_ controller: UIActivityViewController, subjectForActivityType type: UIActivity.ActivityType?) -> String { title }
}
