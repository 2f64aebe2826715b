import Foundation
import StillbarCore
import Testing
@testable import StillbarKit

/// The repository that is tested, and what `ios/test` made for it.
enum Repository {
    static let root = URL(fileURLWithPath: #filePath).appendingPathComponent("../../../..").standardized

    static func journey(_ name: String) throws -> String { try text("core/journeys/\(name).journey") }

    static func text(_ path: String) throws -> String { try String(contentsOf: root.appendingPathComponent(path), encoding: .utf8) }

    static let photo = try! Data(contentsOf: root.appendingPathComponent("core/src/demo/lock.png"))

    /// The text of a story as the core alone shows it.
    static func transcript(_ name: String) throws -> String {
        let folder = try #require(ProcessInfo.processInfo.environment["STILLBAR_TRANSCRIPTS"], "ios/test makes the transcripts")
        return try String(contentsOf: URL(fileURLWithPath: folder).appendingPathComponent("\(name).txt"), encoding: .utf8)
    }
}

/// A keychain in memory. It outlives the app, as the phone's does.
final class TestKeychain: Keychain, @unchecked Sendable {
    var secrets: [String: Data] = [:]
    /// What may be replaced.
    var heads: [String: Data] = [:]
    /// What it answers instead, if anything.
    var refuses: Int32?

    func find(_ name: String) -> (status: Int32, secret: Data?) {
        if let refuses { return (refuses, nil) }
        return (secrets[name] ?? heads[name]).map { (Status.success, $0) } ?? (Status.notFound, nil)
    }

    func add(_ secret: Data, as name: String) -> Int32 {
        if let refuses { return refuses }
        if secrets[name] != nil { return Status.duplicate }
        secrets[name] = secret
        return Status.success
    }

    func put(_ secret: Data, as name: String) -> Int32 {
        if let refuses { return refuses }
        if secrets[name] != nil { secrets[name] = secret } else { heads[name] = secret }
        return Status.success
    }
}

/// What the phone lends, counted, with a clock that stands until it is moved and chance from a seed, as `core/tests/it/desk.rs` has it.
final class TestDevice: Platform, @unchecked Sendable {
    /// 2026-11-02 07:40 UTC.
    static let morning: Int64 = 1_793_605_200_000
    let lock = NSLock()
    private var now = morning
    private var chance: UInt64 = 1
    private var counted: [String: Int] = [:]
    private let real: Vault

    init(_ real: Vault) {
        self.real = real
    }

    var calls: [String: Int] { lock.withLock { counted } }

    func pass(_ ms: Int64) { lock.withLock { now += ms } }

    func nowMs() -> Int64 { count("nowMs") { now } }

    func offsetMinutes(atMs: Int64) -> Int32 { count("offsetMinutes") { 60 } }

    func running() -> Running? { count("running") { Running(start: 1, ms: UInt64(now - TestDevice.morning)) } }

    func random(count bytes: UInt32) -> Data {
        count("random") {
            // SplitMix64: the same run every time, which a test wants and a phone must never have.
            Data((0..<bytes).map { _ in
                var z = chance
                chance &+= 0x9E37_79B9_7F4A_7C15
                z = (z ^ (z >> 30)) &* 0xBF58_476D_1CE4_E5B9
                z = (z ^ (z >> 27)) &* 0x94D0_49BB_1331_11EB
                return UInt8(truncatingIfNeeded: z ^ (z >> 31))
            })
        }
    }

    func loadSecret() throws -> Data? { try count("loadSecret") { try real.loadSecret() } }

    func storeSecret(secret: Data) throws { try count("storeSecret") { try real.storeSecret(secret: secret) } }

    func loadHead() throws -> Data? { try count("loadHead") { try real.loadHead() } }

    func storeHead(head: Data) throws { try count("storeHead") { try real.storeHead(head: head) } }

    private func count<T>(_ name: String, _ deed: () throws -> T) rethrows -> T {
        try lock.withLock {
            counted[name, default: 0] += 1
            return try deed()
        }
    }
}

/// A camera that gives what the test has for it.
@MainActor final class TestCamera: Camera {
    let hasLight = true
    private(set) var frames: Bool?
    private(set) var shots = 0
    private(set) var lit = false
    private(set) var closed = false
    private var seen: (@MainActor (Picture) async -> Void)?
    private var trouble: (@MainActor (String) async -> Void)?

    func open(frames: Bool, seen: @escaping @MainActor (Picture) async -> Void, trouble: @escaping @MainActor (String) async -> Void) {
        (self.frames, self.seen, self.trouble) = (frames, seen, trouble)
    }

    func shoot() { shots += 1 }

    func light(_ on: Bool) { lit = on }

    func close() { closed = true }

    func see(_ picture: Picture) async { await seen?(picture) }

    func fail(_ why: String) async { await trouble?(why) }
}

/// Keeps what it was asked to do.
@MainActor final class TestPhone: Phone {
    var mayUse = true
    var hasFreeLink = false
    /// Runs while the person is asked for the camera.
    var whileAsked: () async -> Void = {}
    private(set) var asked = 0
    private(set) var rung: [String] = []
    private(set) var shared: [(title: String, text: String)] = []
    private(set) var files: [(title: String, file: URL)] = []
    private(set) var buzzes = 0
    private(set) var cameras: [TestCamera] = []

    func ring(_ number: String) { rung.append(number) }

    func share(title: String, text: String) { shared.append((title, text)) }

    func share(title: String, file: URL) { files.append((title, file)) }

    func buzz() { buzzes += 1 }

    func mayUseCamera() async -> Bool {
        asked += 1
        await whileAsked()
        return mayUse
    }

    func camera() -> any Camera {
        cameras.append(TestCamera())
        return cameras.last!
    }
}

/// The real shell over the real core, on a phone of the test's own.
@MainActor final class Rig {
    let support = FileManager.default.temporaryDirectory.appendingPathComponent("stillbar-\(UUID().uuidString)")
    let keychain = TestKeychain()
    let device: TestDevice
    let phone = TestPhone()
    private(set) var shell: Shell

    private let languages: [String]

    /// `languages`: those that the phone asks for.
    init(languages: [String] = ["en"]) async throws {
        self.languages = languages
        device = TestDevice(Vault(keychain, name: try Place(in: support).keyName))
        shell = Rig.start(support, device, phone, languages)
        await shell.come()
    }

    deinit { try? FileManager.default.removeItem(at: support) }

    private static func start(_ support: URL, _ device: TestDevice, _ phone: TestPhone, _ languages: [String]) -> Shell {
        let core = Core {
            let field = try Field.open(folder: Place(in: support).journal.path, platform: device)
            field.speak(languages: languages)
            return field
        }
        return Shell(core: core, phone: phone)
    }

    /// The process is killed, and the person starts the app again.
    func kill() async {
        // What was given to the core's thread is on its way in any case; then all of it goes.
        shell.core.queue.sync {}
        shell = Rig.start(support, device, phone, languages)
        await shell.come()
    }

    var journal: URL { support.appendingPathComponent("journal") }

    var text: String { shell.screen.map(asText) ?? "" }

    var page: Page { shell.page! }

    var form: Form { shell.form! }

    var camera: TestCamera { phone.cameras.last! }

    func play(_ journeys: String...) async throws {
        for name in journeys { try await Player(self).play(Repository.journey(name)) }
    }
}
