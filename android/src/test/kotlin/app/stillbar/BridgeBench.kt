package app.stillbar

import app.stillbar.core.Field
import app.stillbar.core.Platform
import app.stillbar.core.Running
import java.io.File
import org.junit.Test

/**
 * From an act to the next screen through the bindings, on the journal that `core/examples/screen_speed.rs` left. Not a test: its
 * name keeps it out of `mvn test`, and tests/bench/bridge.py runs it.
 */
class BridgeBench {
    private class Lent(folder: File) : Platform {
        private val key = File(folder, "bench.key")
        override fun nowMs() = System.currentTimeMillis()
        override fun offsetMinutes(atMs: Long) = 0
        override fun running(): Running? = null
        override fun random(count: UInt) = ByteArray(count.toInt()) { it.toByte() }
        override fun loadSecret(): ByteArray = key.readBytes()
        override fun storeSecret(secret: ByteArray) = error("there is one already")
        override fun loadHead(): ByteArray? = null
        override fun storeHead(head: ByteArray) = Unit
    }

    @Test
    fun fromAnActToTheScreen() {
        val folder = File(System.getProperty("stillbar.bench")!!)
        val times = 501
        Field.open(folder.resolve("journal").path, Lent(folder)).use { field ->
            val (route, blocks) = field.screen().run { route to blocks.size }
            // The first rounds find the JVM still compiling.
            val took = List(4 * times) {
                val start = System.nanoTime()
                field.act(null, "go $route", emptyList())
                check(field.screen().blocks.size == blocks)
                (System.nanoTime() - start) / 1000
            }.takeLast(times).sorted()
            folder.resolve("kotlin.json").writeText("""{"route":"$route","blocks":$blocks,"median_us":${took[times / 2]},"p95_us":${took[times * 95 / 100]}}""")
        }
    }
}
