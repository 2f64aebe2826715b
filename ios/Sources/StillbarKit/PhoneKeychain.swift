#if canImport(Security)
    import Foundation
    import Security

    /// The phone's own keychain.
    public struct PhoneKeychain: Keychain {
        public init() {}

        public func find(_ name: String) -> (status: Int32, secret: Data?) {
            var found: CFTypeRef?
            let wanted = item(name).merging([kSecReturnData: true]) { $1 }
            let status = SecItemCopyMatching(wanted as CFDictionary, &found)
            return (status, found as? Data)
        }

        public func add(_ secret: Data, as name: String) -> Int32 {
            // Synchronising with other devices needs an attribute that is not set; "ThisDeviceOnly" keeps it out of backups, too.
            // Background work must read it while the phone is locked, so the first unlock is enough.
            let access = kSecAttrAccessibleAfterFirstUnlockThisDeviceOnly
            return SecItemAdd(item(name).merging([kSecValueData: secret, kSecAttrAccessible: access]) { $1 } as CFDictionary, nil)
        }

        public func put(_ secret: Data, as name: String) -> Int32 {
            let status = SecItemUpdate(item(name) as CFDictionary, [kSecValueData: secret] as CFDictionary)
            return status == errSecItemNotFound ? add(secret, as: name) : status
        }

        private func item(_ name: String) -> [CFString: Any] {
            [kSecClass: kSecClassGenericPassword, kSecAttrService: "app.stillbar", kSecAttrAccount: name, kSecUseDataProtectionKeychain: true]
        }
    }
#endif
