import Foundation
import StillbarCore
import Testing
@testable import StillbarKit

/// The device's key, and the other things that the phone lends.
@MainActor struct VaultTests {
    private func why(_ deed: () throws -> Void) -> String {
        do {
            try deed()
            return "nothing was refused"
        } catch PlatformError.Failed(let why) {
            return why
        } catch {
            return "\(error)"
        }
    }

    @Test func theKeyIsKeptAndNeverDestroyed() throws {
        let keychain = TestKeychain()
        let vault = Vault(keychain, name: "device-key-1")
        #expect(try vault.loadSecret() == nil)
        try vault.storeSecret(secret: Data(1...32))
        #expect(try Vault(keychain, name: "device-key-1").loadSecret() == Data(1...32))
        // A journal that goes on under a new key: the former ones are set aside.
        try vault.storeSecret(secret: Data(2...33))
        try vault.storeSecret(secret: Data(3...34))
        #expect(try vault.loadSecret() == Data(3...34))
        #expect(keychain.secrets["device-key-1-former-1"] == Data(1...32))
        #expect(keychain.secrets["device-key-1-former-2"] == Data(2...33))
    }

    @Test func theEndOfTheChainIsReplaced() throws {
        let keychain = TestKeychain()
        let vault = Vault(keychain, name: "device-key-1")
        #expect(try vault.loadHead() == nil)
        try vault.storeHead(head: Data([1, 2]))
        try vault.storeHead(head: Data([3]))
        #expect(try Vault(keychain, name: "device-key-1").loadHead() == Data([3]))
        // A new installation has a chain of its own.
        #expect(try Vault(keychain, name: "device-key-2").loadHead() == nil)
        keychain.refuses = Status.locked
        #expect(why { try vault.storeHead(head: Data([4])) }.contains("The end of the journal in the phone's keychain"))
        #expect(why { _ = try vault.loadHead() }.contains("was not unlocked since it was started"))
    }

    /// A start's name gives one number, which fits the journal's database.
    @Test func aStartIsOneNumber() throws {
        let one = try #require(UUID(uuidString: "FFFFFFFF-FFFF-FFFF-0000-000000000000"))
        #expect(Uptime.number(of: one) == UInt64(Int64.max))
        #expect(Uptime.number(of: one) != Uptime.number(of: UUID()))
    }

    @Test(arguments: [
        (Status.locked, "was not unlocked since it was started"), (Status.unavailable, "does not answer"),
        (Status.noEntitlement, "may not use the keychain"), (Int32(-4), "the keychain says -4"),
    ])
    func aRefusalIsToldWithWhatToDo(_ status: Int32, _ said: String) {
        let keychain = TestKeychain()
        keychain.refuses = status
        let vault = Vault(keychain, name: "device-key-1")
        #expect(why { _ = try vault.loadSecret() }.contains(said))
        #expect(why { try vault.storeSecret(secret: Data(count: 32)) }.contains(said))
        #expect(keychain.secrets.isEmpty)
    }

    /// It reaches the person through the core, and nothing was begun.
    @Test func aRefusalIsShown() async throws {
        let support = FileManager.default.temporaryDirectory.appendingPathComponent("stillbar-\(UUID().uuidString)")
        defer { try? FileManager.default.removeItem(at: support) }
        let keychain = TestKeychain()
        keychain.refuses = Status.locked
        let phone = TestPhone()
        let shell = Shell(
            core: Core {
                let place = try Place(in: support)
                return try Field.open(folder: place.journal.path, platform: Vault(keychain, name: place.keyName))
            }, phone: phone)
        await shell.come()
        #expect(shell.trouble?.contains("unlock it and try again") == true, "\(shell.trouble ?? "nothing")")
        keychain.refuses = nil
        await shell.come()
        #expect(shell.trouble == nil && shell.page?.title == "Jobs")
    }

    /// The keychain outlives an app that was removed: what is installed anew is another device.
    @Test func anInstallationHasAKeyOfItsOwn() async throws {
        let support = FileManager.default.temporaryDirectory.appendingPathComponent("stillbar-\(UUID().uuidString)")
        defer { try? FileManager.default.removeItem(at: support) }
        let keychain = TestKeychain()
        func start() throws {
            let place = try Place(in: support)
            _ = try Field.open(folder: place.journal.path, platform: Vault(keychain, name: place.keyName))
        }
        try start()
        try start()
        #expect(keychain.secrets.count == 1)
        try FileManager.default.removeItem(at: support)
        try start()
        #expect(keychain.secrets.count == 2 && Set(keychain.secrets.values).count == 2)
    }

    @Test func clockZoneAndChance() {
        let vault = Vault(TestKeychain(), name: "device-key-1")
        let (before, now, after) = (Date().timeIntervalSince1970 * 1000, Double(vault.nowMs()), Date().timeIntervalSince1970 * 1000)
        #expect(before - 1 <= now && now <= after)
        // Whatever the zone of this machine is, it is that of its calendar.
        for ms: Int64 in [1_793_605_200_000, 1_783_000_000_000] {
            let date = Date(timeIntervalSince1970: Double(ms) / 1000)
            #expect(Int(vault.offsetMinutes(atMs: ms)) == TimeZone.current.secondsFromGMT(for: date) / 60)
        }
        #expect(vault.random(count: 32).count == 32 && vault.random(count: 0).isEmpty)
        #expect(vault.random(count: 32) != vault.random(count: 32))
    }
}
