package app.stillbar

import android.content.Context
import android.os.SystemClock
import android.provider.Settings
import android.security.keystore.KeyGenParameterSpec
import android.security.keystore.KeyProperties
import app.stillbar.core.Platform
import app.stillbar.core.PlatformException
import app.stillbar.core.Running
import java.io.File
import java.security.KeyStore
import java.security.SecureRandom
import java.util.TimeZone
import javax.crypto.Cipher
import javax.crypto.KeyGenerator
import javax.crypto.SecretKey
import javax.crypto.spec.GCMParameterSpec

/**
 * What the phone lends to the core: clocks, zone, chance, the device's key, sealed by a key that never leaves the Android Keystore, and
 * the end of the device's chain; both are kept where no backup takes them. A restored phone is another device and says so.
 */
class Vault(private val context: Context, private val clock: () -> Long = System::currentTimeMillis) : Platform {
    private val file = File(context.noBackupFilesDir, "device.key")
    private val head = File(context.noBackupFilesDir, "journal.head")
    private val chance = SecureRandom()

    override fun nowMs(): Long = clock()

    override fun offsetMinutes(atMs: Long): Int = TimeZone.getDefault().getOffset(atMs) / 60_000

    /** By the clock that goes on while the phone sleeps; without a count of its starts nothing tells one start from the next. */
    override fun running(): Running? {
        val start = Settings.Global.getInt(context.contentResolver, Settings.Global.BOOT_COUNT, NO_COUNT)
        return if (start == NO_COUNT) null else Running(start.toULong(), SystemClock.elapsedRealtime().toULong())
    }

    override fun random(count: UInt): ByteArray = ByteArray(count.toInt()).also(chance::nextBytes)

    override fun loadSecret(): ByteArray? = told(KEY, file, "read") {
        if (!file.exists()) return@told null
        val sealed = file.readBytes()
        val key = keystore().getKey(ALIAS, null) as? SecretKey
            ?: throw PlatformException.Failed("This phone's Keystore no longer has the key that opens $file. Its journal can be read on no other phone.")
        val cipher = Cipher.getInstance(CIPHER)
        cipher.init(Cipher.DECRYPT_MODE, key, GCMParameterSpec(TAG_BITS, sealed, 0, NONCE))
        cipher.doFinal(sealed, NONCE, sealed.size - NONCE)
    }

    override fun storeSecret(secret: ByteArray) = told(KEY, file, "written") {
        // The key that signed a journal is never destroyed: should that journal come back, its chain goes on with it.
        if (file.exists()) {
            val free = generateSequence(1) { it + 1 }.map { File("${file.path}.former-$it") }.first { !it.exists() }
            whole(free, file.readBytes())
        }
        val cipher = Cipher.getInstance(CIPHER)
        cipher.init(Cipher.ENCRYPT_MODE, keystore().getKey(ALIAS, null) as? SecretKey ?: newKey())
        whole(file, cipher.iv + cipher.doFinal(secret))
    }

    override fun loadHead(): ByteArray? = told(HEAD, head, "read") { if (head.exists()) head.readBytes() else null }

    override fun storeHead(head: ByteArray) = told(HEAD, this.head, "written") { whole(this.head, head) }

    /** Writes a file whole or not at all, in place of what is there. */
    private fun whole(file: File, bytes: ByteArray) {
        val half = File(file.path + ".new")
        half.outputStream().use { out ->
            out.write(bytes)
            out.fd.sync()
        }
        check(half.renameTo(file)) { "it cannot be named" }
    }

    private fun keystore(): KeyStore = KeyStore.getInstance(KEYSTORE).apply { load(null) }

    private fun newKey(): SecretKey = KeyGenerator.getInstance(KeyProperties.KEY_ALGORITHM_AES, KEYSTORE).run {
        init(
            KeyGenParameterSpec.Builder(ALIAS, KeyProperties.PURPOSE_ENCRYPT or KeyProperties.PURPOSE_DECRYPT)
                .setBlockModes(KeyProperties.BLOCK_MODE_GCM)
                .setEncryptionPaddings(KeyProperties.ENCRYPTION_PADDING_NONE)
                .setKeySize(256)
                .build(),
        )
        generateKey()
    }

    private fun <T> told(what: String, file: File, deed: String, run: () -> T): T = try {
        run()
    } catch (e: PlatformException) {
        throw e
    } catch (e: Exception) {
        throw PlatformException.Failed("$what $file could not be $deed: ${e.message ?: e.javaClass.simpleName}.")
    }

    private companion object {
        const val KEY = "The device's key"
        const val HEAD = "The end of the journal"
        const val NO_COUNT = -1
        const val KEYSTORE = "AndroidKeyStore"
        const val ALIAS = "stillbar-device"
        const val CIPHER = "AES/GCM/NoPadding"
        const val NONCE = 12
        const val TAG_BITS = 128
    }
}
