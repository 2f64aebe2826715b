import Foundation
import StillbarCore

/// Where the phone keeps secrets. Statuses are those of Apple's Security framework (SecBase.h).
public protocol Keychain: Sendable {
    /// The secret of this name, or why there is none.
    func find(_ name: String) -> (status: Int32, secret: Data?)
    /// Keeps a secret on this device only, readable from its first unlock after a start, in no backup. Replaces none.
    func add(_ secret: Data, as name: String) -> Int32
    /// Likewise, in place of what is there.
    func put(_ secret: Data, as name: String) -> Int32
}

/// What the phone lends to the core: clocks, zone, chance, the device's key, and the end of its chain; both are kept where no backup takes
/// them. A restored phone is another device and says so.
public final class Vault: Platform {
    private let keychain: any Keychain
    private let name: String

    /// `name` is that of the installation's key.
    public init(_ keychain: any Keychain, name: String) {
        self.keychain = keychain
        self.name = name
    }

    public func nowMs() -> Int64 { Int64((Date().timeIntervalSince1970 * 1000).rounded(.down)) }

    public func offsetMinutes(atMs: Int64) -> Int32 {
        Int32(TimeZone.current.secondsFromGMT(for: Date(timeIntervalSince1970: Double(atMs) / 1000)) / 60)
    }

    public func running() -> Running? { Uptime.now() }

    public func random(count: UInt32) -> Data {
        // The system's cryptographic source.
        var chance = SystemRandomNumberGenerator()
        return Data((0..<count).map { _ in UInt8.random(in: .min ... .max, using: &chance) })
    }

    public func loadSecret() throws -> Data? {
        let (status, secret) = keychain.find(name)
        switch status {
        case Status.success where secret != nil: return secret
        case Status.notFound: return nil
        default: throw failed("read", status)
        }
    }

    public func storeSecret(secret: Data) throws {
        var status = keychain.add(secret, as: name)
        if status == Status.duplicate, let former = try loadSecret() {
            // The key that signed a journal is never destroyed: should that journal come back, its chain goes on with it.
            var number = 1
            repeat {
                status = keychain.add(former, as: "\(name)-former-\(number)")
                number += 1
            } while status == Status.duplicate
            if status == Status.success { status = keychain.put(secret, as: name) }
        }
        if status != Status.success { throw failed("written", status) }
    }

    public func loadHead() throws -> Data? {
        let (status, head) = keychain.find(headName)
        switch status {
        case Status.success where head != nil: return head
        case Status.notFound: return nil
        default: throw failed("read", status, of: Vault.head)
        }
    }

    public func storeHead(head: Data) throws {
        let status = keychain.put(head, as: headName)
        if status != Status.success { throw failed("written", status, of: Vault.head) }
    }

    /// With the installation's key: a new installation begins a new chain.
    private var headName: String { "\(name)-head" }
    private static let head = "The end of the journal"

    private func failed(_ deed: String, _ status: Int32, of what: String = "The device's key") -> PlatformError {
        let why =
            switch status {
            case Status.duplicate: "it is there already"
            case Status.locked: "the phone was not unlocked since it was started; unlock it and try again"
            case Status.unavailable: "the phone's keychain does not answer; start the phone again"
            case Status.noEntitlement: "this copy of Stillbar may not use the keychain; install it again"
            default: "the keychain says \(status)"
            }
        return .Failed(why: "\(what) in the phone's keychain could not be \(deed): \(why).")
    }
}

/// errSec… of SecBase.h.
enum Status {
    static let success: Int32 = 0
    static let noEntitlement: Int32 = -34018
    static let unavailable: Int32 = -25291
    static let duplicate: Int32 = -25299
    static let notFound: Int32 = -25300
    static let locked: Int32 = -25308
}
