import Foundation

/// What only the phone can do, beside its camera.
@MainActor public protocol Phone: AnyObject {
    func ring(_ number: String)
    func share(title: String, text: String)
    /// A file that is whole and is not written to again.
    func share(title: String, file: URL)
    func buzz()
    /// Whether the link there is now costs nothing.
    var hasFreeLink: Bool { get }
    /// Whether the camera may be used; the person is asked the first time.
    func mayUseCamera() async -> Bool
    /// A camera for one look.
    func camera() -> any Camera
}

/// What a camera gives.
public enum Picture: Sendable {
    /// Brightness, row by row from the top left, without gaps.
    case luma(width: Int, height: Int, bytes: Data)
    /// A whole photo as the camera wrote it.
    case photo(Data)
}

/// A camera: the phone's, or one of the tests.
@MainActor public protocol Camera: AnyObject {
    /// Whether there is a light to switch.
    var hasLight: Bool { get }
    /// Opens it. With `frames`, brightness is given to `seen` again and again, the next one when it has returned; otherwise one photo
    /// comes after `shoot`. `trouble` is a sentence for the person, and the end.
    func open(frames: Bool, seen: @escaping @MainActor (Picture) async -> Void, trouble: @escaping @MainActor (String) async -> Void)
    func shoot()
    func light(_ on: Bool)
    func close()
}

/// The rows of a plane whose rows are `stride` bytes apart, put together. The last row may end early.
public func packed(width: Int, height: Int, stride: Int, plane: UnsafeRawBufferPointer) -> Data {
    if stride == width { return Data(plane.prefix(width * height)) }
    return (0..<height).reduce(into: Data(capacity: width * height)) { $0.append(contentsOf: plane[$1 * stride..<$1 * stride + width]) }
}
