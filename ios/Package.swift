// swift-tools-version: 6.0
import PackageDescription

// What `bindings` and `xcframework` write; nothing of it is committed.
let built = "build"

// The core: for the tests on this machine the static library in the folder that `test` names, for phones the framework.
let core: Target
let linked: [LinkerSetting]
if let library = Context.environment["STILLBAR_LIBRARY"] {
    core = .systemLibrary(name: "StillbarCoreFFI", path: "\(built)/StillbarCoreFFI")
    linked = [
        .unsafeFlags(["-L\(library)"]), .linkedLibrary("stillbar"),
        // On Linux, Swift 6.0's libswiftObservation lacks a function that ends the process when a lock fails; nothing calls it.
        .unsafeFlags(["-Xlinker", "--allow-shlib-undefined"], .when(platforms: [.linux])),
    ]
} else {
    core = .binaryTarget(name: "StillbarCoreFFI", path: "\(built)/StillbarCoreFFI.xcframework")
    linked = []
}

let package = Package(
    name: "StillbarKit",
    platforms: [.iOS(.v17), .macOS(.v14)],
    products: [.library(name: "StillbarKit", targets: ["StillbarKit"])],
    targets: [
        core,
        .target(name: "StillbarCore", dependencies: ["StillbarCoreFFI"], path: "\(built)/StillbarCore", linkerSettings: linked),
        .target(name: "StillbarKit", dependencies: ["StillbarCore"]),
        .testTarget(name: "StillbarKitTests", dependencies: ["StillbarKit"]),
    ],
    swiftLanguageModes: [.v6]
)
