import StillbarCore

/// The few words that are the shell's own: of the phone, never of the job.
public enum Words {
    public static let cannotStart = "Stillbar cannot start"
    public static let tryAgain = "Try again"
    public static let light = "Light"
    public static let takePhoto = "Take the photo"
    public static let takeNone = "Take no photo"
    public static let stopScanning = "Stop scanning"
    public static let finder = "What the camera sees"
    public static let smaller = "Smaller"
    public static let larger = "Larger"
    public static let clear = "Clear"
    public static let orType = "or type your full name"
    public static let clash = "The number counts. Empty it to choose an answer instead."
    public static let noCamera = "This phone has no camera."
    public static let noPicture = "The camera gave no picture."
    public static let cameraTaken = "Another app took the camera."
    static let cameraClosed = "The camera was closed."
    static let cameraForbidden = "Stillbar may not use the camera. Allow it in the phone's settings."

    static func volts(_ pair: String) -> String { "\(pair), volts" }

    /// What a caution's sign means.
    static func sign(_ tone: Tone) -> String {
        switch tone {
        case .warn: "Warning"
        case .forbid: "Stop"
        case .must: "Must do"
        case .plain, .quiet: "Note"
        }
    }
}
