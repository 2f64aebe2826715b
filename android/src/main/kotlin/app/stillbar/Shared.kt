package app.stillbar

import android.content.ClipData
import android.content.ContentProvider
import android.content.ContentValues
import android.content.Context
import android.content.Intent
import android.database.MatrixCursor
import android.net.Uri
import android.os.ParcelFileDescriptor
import android.provider.OpenableColumns
import app.stillbar.core.Errand
import java.io.File
import java.io.FileNotFoundException

/** Lends the files that the core made to be shared to the app that the person chose, to read, and to no other. */
class Shared : ContentProvider() {
    override fun onCreate() = true

    override fun getType(uri: Uri) = if (uri.path.orEmpty().endsWith(".pdf")) "application/pdf" else "application/octet-stream"

    override fun openFile(uri: Uri, mode: String): ParcelFileDescriptor {
        if (mode != "r") throw FileNotFoundException("to read only")
        return ParcelFileDescriptor.open(file(uri), ParcelFileDescriptor.MODE_READ_ONLY)
    }

    override fun query(uri: Uri, columns: Array<String>?, selection: String?, arguments: Array<String>?, order: String?): MatrixCursor {
        val file = file(uri)
        val known = mapOf(OpenableColumns.DISPLAY_NAME to file.name, OpenableColumns.SIZE to file.length())
        val wanted = (columns ?: known.keys.toTypedArray()).filter { it in known }
        return MatrixCursor(wanted.toTypedArray()).apply { addRow(wanted.map(known::get)) }
    }

    override fun insert(uri: Uri, values: ContentValues?): Uri? = null
    override fun update(uri: Uri, values: ContentValues?, selection: String?, arguments: Array<String>?) = 0
    override fun delete(uri: Uri, selection: String?, arguments: Array<String>?) = 0

    /** By its last name alone: no path leads anywhere else. */
    private fun file(uri: Uri): File {
        val name = uri.lastPathSegment.orEmpty()
        val file = folder(context!!).resolve(name)
        if ('/' in name || name.startsWith(".") || !file.isFile) throw FileNotFoundException(name)
        return file
    }

    companion object {
        private fun folder(context: Context) = context.filesDir.resolve("journal/shared")

        /** The chooser for a file. */
        fun chooser(context: Context, errand: Errand.ShareFile): Intent {
            val uri = Uri.Builder().scheme("content").authority("${context.packageName}.shared").appendPath(errand.name).build()
            val send = Intent(Intent.ACTION_SEND).setType(errand.mediaType).putExtra(Intent.EXTRA_SUBJECT, errand.title)
                .putExtra(Intent.EXTRA_STREAM, uri).addFlags(Intent.FLAG_GRANT_READ_URI_PERMISSION)
            // The chooser hands the permission on only for what is in the clip.
            send.clipData = ClipData.newRawUri(errand.title, uri)
            return Intent.createChooser(send, errand.title)
        }
    }
}
