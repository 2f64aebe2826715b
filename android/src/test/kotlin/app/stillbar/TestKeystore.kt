package app.stillbar

import java.io.InputStream
import java.io.OutputStream
import java.security.Key
import java.security.KeyStoreSpi
import java.security.Provider
import java.security.SecureRandom
import java.security.cert.Certificate
import java.security.spec.AlgorithmParameterSpec
import java.util.Collections
import java.util.Date
import java.util.Enumeration
import javax.crypto.KeyGenerator
import javax.crypto.KeyGeneratorSpi
import javax.crypto.SecretKey
import android.security.keystore.KeyGenParameterSpec

/** Stands where the phone's Keystore is: keys by name, in memory; the cipher itself is the machine's own. */
class TestKeystore : Provider(NAME, "1", "in memory") {
    init {
        put("KeyStore.$NAME", Store::class.java.name)
        put("KeyGenerator.AES", Generator::class.java.name)
    }

    class Generator : KeyGeneratorSpi() {
        private lateinit var spec: KeyGenParameterSpec
        override fun engineInit(random: SecureRandom?) = error("needs a name")
        override fun engineInit(size: Int, random: SecureRandom?) = error("needs a name")
        override fun engineInit(params: AlgorithmParameterSpec, random: SecureRandom?) {
            spec = params as KeyGenParameterSpec
        }
        override fun engineGenerateKey(): SecretKey = KeyGenerator.getInstance("AES", "SunJCE").run {
            init(spec.keySize)
            generateKey().also { keys[spec.keystoreAlias] = it }
        }
    }

    class Store : KeyStoreSpi() {
        override fun engineGetKey(alias: String, password: CharArray?): Key? = keys[alias]
        override fun engineLoad(stream: InputStream?, password: CharArray?) = Unit
        override fun engineStore(stream: OutputStream?, password: CharArray?) = Unit
        override fun engineAliases(): Enumeration<String> = Collections.enumeration(keys.keys)
        override fun engineContainsAlias(alias: String) = alias in keys
        override fun engineDeleteEntry(alias: String) { keys.remove(alias) }
        override fun engineSize() = keys.size
        override fun engineIsKeyEntry(alias: String) = alias in keys
        override fun engineIsCertificateEntry(alias: String) = false
        override fun engineGetCertificate(alias: String): Certificate? = null
        override fun engineGetCertificateChain(alias: String): Array<Certificate>? = null
        override fun engineGetCertificateAlias(cert: Certificate?): String? = null
        override fun engineGetCreationDate(alias: String) = Date(0)
        override fun engineSetKeyEntry(alias: String, key: Key, password: CharArray?, chain: Array<Certificate>?) { keys[alias] = key as SecretKey }
        override fun engineSetKeyEntry(alias: String, key: ByteArray, chain: Array<Certificate>?) = error("no")
        override fun engineSetCertificateEntry(alias: String, cert: Certificate?) = error("no")
    }

    companion object {
        const val NAME = "AndroidKeyStore"
        val keys = HashMap<String, SecretKey>()
    }
}
