package app.stillbar

import app.stillbar.core.Block
import app.stillbar.core.Filled
import app.stillbar.core.Screen

/**
 * What the person gave on one screen. Every change goes on as a draft at once, so that nothing typed is lost with the
 * process; the whole goes along with the next act.
 */
class Form(screen: Screen, private val draft: (field: String, value: String) -> Unit) {
    private val values = LinkedHashMap<String, String>()
    // Of a reading in volts and an answer the number counts.
    private val typed = HashMap<String, String>()
    private val picked = HashMap<String, List<String>>()

    init {
        for (block in screen.blocks) when (block) {
            is Block.Entry -> values[block.entry.field] = block.entry.value
            is Block.Mark -> values[block.field] = block.value
            is Block.Choice -> {
                picked[block.choice.field] = block.choice.chosen
                values[block.choice.field] = block.choice.chosen.joinToString("\n")
            }
            is Block.Pad -> for (row in block.pad.rows) {
                val answer = block.pad.options.any { it.value == row.chosen }
                if (answer) picked[row.field] = listOf(row.chosen) else typed[row.field] = row.chosen
                values[row.field] = row.chosen
            }
            else -> Unit
        }
    }

    fun type(field: String, value: String) {
        typed[field] = value
        keep(field)
    }

    fun pick(field: String, chosen: List<String>) {
        picked[field] = chosen
        keep(field)
    }

    fun filled(): List<Filled> = values.map { (field, value) -> Filled(field, value) }

    private fun keep(field: String) {
        val value = typed[field]?.takeIf { it.isNotBlank() } ?: picked[field]?.joinToString("\n") ?: typed[field].orEmpty()
        if (values.put(field, value) != value) draft(field, value)
    }
}
