package app.stillbar

import android.graphics.Bitmap
import app.stillbar.core.Block
import com.google.zxing.BarcodeFormat
import com.google.zxing.EncodeHintType
import com.google.zxing.qrcode.QRCodeWriter
import com.google.zxing.qrcode.decoder.ErrorCorrectionLevel
import java.io.ByteArrayOutputStream
import java.util.Random

/** Plays the core's journeys (`core/src/journey.rs` tells their form) on the real views. */
class Player(private val rig: Rig, private val between: () -> Unit = {}) {
    private val blocks get() = rig.shell.screen!!.blocks

    fun play(script: String) {
        for (line in script.lines().map(String::trim).filter { it.isNotEmpty() && !it.startsWith("#") }) {
            try {
                step(line)
            } catch (e: Throwable) {
                throw AssertionError("\"$line\": ${e.message}\n\n${rig.text}", e)
            }
        }
    }

    private fun step(line: String) {
        val (verb, rest) = line.split(' ', limit = 2)
        val about = rest.substringBefore(" = ")
        val value = rest.substringAfter(" = ", "")
        when (verb) {
            "tap" -> { rig.tap(button(rest)); shoot(photo) }
            "photo" -> { rig.tap(block<Block.Photo> { it.photo.label == about }.id + ":take"); shoot(if (value.isEmpty()) photo else pictureOf(value)) }
            "scan" -> { rig.tap(button(about)); rig.eyes.see(frameOf(value)); rig.idle() }
            "fill" -> rig.type(block<Block.Entry> { it.entry.label == about }.id, value)
            "choose" -> block<Block.Choice> { it.choice.label == about }.let { rig.tap("${it.id}:${it.choice.options.indexOfFirst { o -> o.label == value }}") }
            "read" -> read(about, value)
            "sign" -> rig.type(block<Block.Mark> { it.label == about }.id + ":typed", value)
            "wait" -> rig.phone.ahead += value.ifEmpty { rest }.toLong() * 60_000
            "see" -> check(plain(rest) in plain(rig.text) && plain(rest) in plain(rig.shown())) { "this is not on the screen, which shows\n${rig.shown()}" }
            "unseen" -> check(rest !in rig.text) { "this is on the screen" }
            else -> error("there is no such verb")
        }
        if (verb in listOf("tap", "photo", "scan")) between()
    }

    private fun read(label: String, value: String) {
        val block = block<Block.Pad> { it.pad.rows.any { row -> row.label == label } }
        val row = block.pad.rows.indexOfFirst { it.label == label }
        val option = block.pad.options.indexOfFirst { it.label == value }
        if (option >= 0) rig.tap("${block.id}:$row:$option") else rig.type("${block.id}:$row:volts", value)
    }

    /** If a photo was asked for, it is taken. */
    private fun shoot(picture: ByteArray) {
        if (rig.found("camera-shoot") == null) return
        rig.eyes.shows = Picture.Photo(picture)
        rig.tap("camera-shoot")
    }

    /** The id of the one button or row of this label. */
    fun button(label: String): String {
        val screen = rig.shell.screen!!
        val all = blocks.mapNotNull {
            when (it) {
                is Block.Button -> it.button.label to it.button.id
                is Block.Step -> (it.step.title to it.id).takeIf { _ -> it.step.action.isNotEmpty() }
                else -> null
            }
        } + listOfNotNull(screen.main, screen.up).map { it.label to it.id }
        val exact = all.filter { it.first == label }
        val within = all.filter { label in it.first }
        return (exact.singleOrNull() ?: within.singleOrNull().takeIf { exact.isEmpty() } ?: error("${within.size} buttons have this label")).second
    }

    private inline fun <reified B : Block> block(fits: (B) -> Boolean): B = blocks.filterIsInstance<B>().first(fits)

    // The text form of a screen has marks of its own; in the views the same words stand with other punctuation.
    private fun plain(text: String) = text.replace(Regex("[\\[\\]>.#]"), "").replace(Regex("\\s+"), " ").trim()

    companion object {
        private val photo by lazy { repository.resolve("core/src/demo/lock.png").readBytes() }

        /** A grainy frame of the camera with this code in it, drawn by another writer than ours. */
        fun frameOf(code: String, width: Int = 640, height: Int = 480): Picture.Luma {
            val hints = mapOf(EncodeHintType.ERROR_CORRECTION to ErrorCorrectionLevel.Q, EncodeHintType.MARGIN to 4)
            val symbol = QRCodeWriter().encode(code, BarcodeFormat.QR_CODE, 320, 320, hints)
            val chance = Random(1)
            val bytes = ByteArray(width * height) { at ->
                val (x, y) = at % width - (width - 320) / 2 to at / width - (height - 320) / 2
                val dark = x in 0 until 320 && y in 0 until 320 && symbol.get(x, y)
                ((if (dark) 60 else 150) + chance.nextInt(24)).toByte()
            }
            return Picture.Luma(width, height, bytes)
        }

        fun pictureOf(code: String): ByteArray {
            val frame = frameOf(code)
            val pixels = IntArray(frame.bytes.size) { at -> (frame.bytes[at].toInt() and 255).let { 0xFF shl 24 or (it shl 16) or (it shl 8) or it } }
            val out = ByteArrayOutputStream()
            Bitmap.createBitmap(pixels, frame.width, frame.height, Bitmap.Config.ARGB_8888).compress(Bitmap.CompressFormat.PNG, 100, out)
            return out.toByteArray()
        }
    }
}
