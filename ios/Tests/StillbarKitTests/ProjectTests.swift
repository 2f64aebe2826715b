import Foundation
import Testing

/// What the app's files say to the system and to Xcode, read by Foundation's own parser of property lists.
struct ProjectTests {
    private func list(_ path: String) throws -> [String: Any] {
        let data = try Data(contentsOf: Repository.root.appendingPathComponent("ios/App/\(path)"))
        return try #require(try PropertyListSerialization.propertyList(from: data, format: nil) as? [String: Any])
    }

    /// The system refuses a task whose name is not permitted, and ends an app that uses the camera without having said what for.
    @Test func whatTheAppAsksTheSystemFor() throws {
        let info = try list("Info.plist")
        let permitted = try #require(info["BGTaskSchedulerPermittedIdentifiers"] as? [String])
        let app = try Repository.text("ios/App/Stillbar/StillbarApp.swift")
        #expect(permitted.count == 1 && permitted.allSatisfy { app.contains("\"\($0)\"") })
        #expect(info["UIBackgroundModes"] as? [String] == ["fetch"])
        #expect((info["NSCameraUsageDescription"] as? String)?.isEmpty == false)
        // The camera and an office on the same network, and nothing else that needs a reason.
        let reasons = info.keys.filter { $0.hasSuffix("UsageDescription") }
        #expect(Set(reasons) == ["NSCameraUsageDescription", "NSLocalNetworkUsageDescription"])
    }

    /// Readable in the background from the first unlock after a start, and not before.
    @Test func howFilesAreProtected() throws {
        let rights = try list("Stillbar.entitlements")
        let name = "com.apple.developer.default-data-protection"
        #expect(rights as? [String: String] == [name: "NSFileProtectionCompleteUntilFirstUserAuthentication"])
        #expect(try list("Stillbar/PrivacyInfo.xcprivacy")["NSPrivacyTracking"] as? Bool == false)
    }

    /// Every object of the project that is named is there, and every one that is there is named; its files exist.
    @Test func theProjectHoldsTogether() throws {
        let project = try list("Stillbar.xcodeproj/project.pbxproj")
        let objects = try #require(project["objects"] as? [String: [String: Any]])
        func named(_ value: Any) -> [String] {
            if let text = value as? String { return objects[text] == nil && !text.hasPrefix("A00000") ? [] : [text] }
            if let list = value as? [Any] { return list.flatMap(named) }
            return (value as? [String: Any])?.values.flatMap(named) ?? []
        }
        let all = Set(objects.values.flatMap(named) + named(project["rootObject"] ?? ""))
        #expect(all == Set(objects.keys))
        let settings = objects.values.compactMap { $0["buildSettings"] as? [String: Any] }
        let files = settings.flatMap { [$0["INFOPLIST_FILE"], $0["CODE_SIGN_ENTITLEMENTS"]] }.compactMap { $0 as? String }
        #expect(files.count == 4)
        let folders = objects.values.filter { $0["isa"] as? String == "PBXFileSystemSynchronizedRootGroup" }.compactMap { $0["path"] as? String }
        let package = objects.values.compactMap { $0["relativePath"] as? String }
        for path in files + folders + package.map({ "\($0)/Package.swift" }) {
            #expect(FileManager.default.fileExists(atPath: Repository.root.appendingPathComponent("ios/App/\(path)").path), "\(path)")
        }
        #expect(settings.filter { $0["SWIFT_VERSION"] as? String == "6.0" }.count == 2)
    }
}
