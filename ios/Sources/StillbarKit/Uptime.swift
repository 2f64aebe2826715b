import Foundation
import StillbarCore

#if canImport(Darwin)
    import Darwin
#endif

/// How long this phone has been running, by a clock that goes on while it sleeps and that nobody sets.
enum Uptime {
    static func now() -> Running? {
        #if canImport(Darwin)
            // mach_absolute_time stops while the phone sleeps; this one does not.
            var base = mach_timebase_info_data_t()
            guard let start, mach_timebase_info(&base) == KERN_SUCCESS, base.denom > 0 else { return nil }
            let nanos = mach_continuous_time() / UInt64(base.denom) * UInt64(base.numer)
            return Running(start: start, ms: nanos / 1_000_000)
        #else
            return nil
        #endif
    }

    #if canImport(Darwin)
        /// Which start of the phone this is. kern.boottime would not do: it moves when the wall clock is set.
        private static let start: UInt64? = {
            var text = [CChar](repeating: 0, count: 64)
            var size = text.count - 1
            guard sysctlbyname("kern.bootsessionuuid", &text, &size, nil, 0) == 0 else { return nil }
            return UUID(uuidString: String(cString: text)).map(number)
        }()
    #endif

    /// A number of a start from its name; without the highest bit, because the database's whole numbers have a sign.
    static func number(of start: UUID) -> UInt64 {
        withUnsafeBytes(of: start.uuid) { bytes in bytes.prefix(8).reduce(0) { $0 << 8 | UInt64($1) } } >> 1
    }
}
