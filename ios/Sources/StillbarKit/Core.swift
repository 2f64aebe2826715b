import Dispatch
import StillbarCore

/// The core, and the one thread that calls it, so that no screen waits for the disk. Calls run in the order in which they were made.
@MainActor public final class Core {
    let queue = DispatchQueue(label: "app.stillbar.core", qos: .userInitiated)
    private let held: Held

    /// `open` is called on that thread, and again after it failed.
    public init(open: @escaping @Sendable () throws -> Field) {
        held = Held(open: open)
    }

    /// Calls the core; opens it if it never was.
    func call<T: Sendable>(_ deed: @escaping @Sendable (Field) throws -> T) async throws -> T {
        try await withCheckedThrowingContinuation { done in
            queue.async { [held] in done.resume(with: Result { try deed(try held.field()) }) }
        }
    }

    /// The same without waiting. What fails here is told by the next act.
    func tell(_ deed: @escaping @Sendable (Field) -> Void) {
        queue.async { [held] in if let field = try? held.field() { deed(field) } }
    }

    /// Closes the journal, if it was ever opened.
    func suspend() async {
        await withCheckedContinuation { done in
            queue.async { [held] in
                held.opened?.suspend()
                done.resume()
            }
        }
    }

    /// Opens the journal, for the first time or again.
    func resume() async throws {
        try await call { try $0.resume() }
    }

    /// Lets the core do what can wait, on another thread: it may wait for the network, and a tap must not wait for it. True if there is
    /// more to do.
    func tend() async throws -> Bool {
        let field = try await call { $0 }
        return await withCheckedContinuation { done in
            DispatchQueue.global(qos: .utility).async { done.resume(returning: field.tend()) }
        }
    }
}

/// Touched on the core's thread only.
private final class Held: @unchecked Sendable {
    private let open: @Sendable () throws -> Field
    private(set) var opened: Field?

    init(open: @escaping @Sendable () throws -> Field) {
        self.open = open
    }

    func field() throws -> Field {
        if let opened { return opened }
        let field = try open()
        opened = field
        return field
    }
}
