// For Android Studio and for the package that goes to phones. The same sources are compiled and tested without an SDK by pom.xml.
plugins {
    id("com.android.application") version "8.13.0"
    id("org.jetbrains.kotlin.android") version "2.2.21"
}

val bindings = layout.buildDirectory.dir("generated/bindings")

android {
    namespace = "app.stillbar"
    compileSdk = 35

    defaultConfig {
        applicationId = "app.stillbar"
        minSdk = 26
        targetSdk = 35
        versionCode = 1
        versionName = "0.2.0"
        ndk { abiFilters += listOf("arm64-v8a", "armeabi-v7a", "x86_64") }
    }
    buildTypes {
        release {
            isMinifyEnabled = true
            proguardFiles(getDefaultProguardFile("proguard-android-optimize.txt"), "keep.pro")
        }
    }
    compileOptions {
        sourceCompatibility = JavaVersion.VERSION_17
        targetCompatibility = JavaVersion.VERSION_17
    }
    sourceSets["main"].kotlin.srcDir(bindings)
    // As extractNativeLibs in the manifest: the libraries are unpacked when the package is installed.
    packaging { jniLibs { useLegacyPackaging = true } }
}

dependencies {
    // The generated bindings call the core through it.
    implementation("net.java.dev.jna:jna:5.19.1@aar")
}

// The Kotlin side of the core, from a core built for this machine.
val writeBindings by tasks.registering(Exec::class) {
    commandLine("./bindings", "../target", bindings.get().asFile.path)
    outputs.dir(bindings)
    outputs.upToDateWhen { false }
}

// The core for each processor; pages of 16 KB, as Android 15 has them.
val buildCore by tasks.registering(Exec::class) {
    workingDir = file("..")
    environment("RUSTFLAGS", "-C link-arg=-Wl,-z,max-page-size=16384")
    commandLine(
        "cargo", "ndk", "--platform", "26", "-t", "arm64-v8a", "-t", "armeabi-v7a", "-t", "x86_64",
        "-o", "android/src/main/jniLibs", "build", "--release", "--locked", "-p", "stillbar-bridge",
    )
}

tasks.named("preBuild") { dependsOn(writeBindings, buildCore) }
