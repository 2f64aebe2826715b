import Foundation
import StillbarCore

/// The app's own folder: the journal in it, and the name of this installation.
public struct Place: Sendable {
    public let journal: URL
    /// The keychain outlives an app that was removed. A new installation begins a new journal, and must not go on with the old key: its
    /// entries would contradict those that the office has. So the key's name is told by a file that goes with the app.
    public let keyName: String

    /// `support` is the folder for an app's own files; it is made if it is not there.
    public init(in support: URL) throws {
        journal = support.appendingPathComponent("journal")
        // Readable from the first unlock after a start: work in the background goes on while the phone is locked in a pocket.
        // What is made inside has the same class.
        #if os(iOS)
            let protection: [FileAttributeKey: Any] = [.protectionKey: FileProtectionType.completeUntilFirstUserAuthentication]
        #else
            let protection: [FileAttributeKey: Any] = [:]
        #endif
        try FileManager.default.createDirectory(at: journal, withIntermediateDirectories: true, attributes: protection)
        #if canImport(Darwin)
            // No backup: on another phone the key is missing, and a second phone with the same key would be taken for this one. The
            // journal goes to the office instead.
            var values = URLResourceValues()
            values.isExcludedFromBackup = true
            var folder = support
            try folder.setResourceValues(values)
        #endif
        let file = support.appendingPathComponent("installation")
        if FileManager.default.fileExists(atPath: file.path) {
            keyName = try String(contentsOf: file, encoding: .utf8)
        } else {
            keyName = "device-key-\(UUID().uuidString)"
            try Data(keyName.utf8).write(to: file, options: .atomic)
        }
    }
}

extension Core {
    /// The core over the app's own folder `support`, with its key in `keychain`.
    public convenience init(in support: URL, _ keychain: any Keychain) {
        self.init {
            let place = try Place(in: support)
            let field = try Field.open(folder: place.journal.path, platform: Vault(keychain, name: place.keyName))
            field.speak(languages: Locale.preferredLanguages)
            return field
        }
    }
}
