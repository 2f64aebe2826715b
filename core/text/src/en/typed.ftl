### What is wrong with something that was typed: inside a sentence, without a full stop. $typed has its quotation marks.

typed-not-volts = { $typed } is not a voltage: write volts as digits, such as 0.4 or 231
typed-not-amps = { $typed } is not a current: write amperes as digits, such as 0.4 or 12
# A mark before exactly three digits is the decimal mark in one country, and parts thousands in another.
# life-critical
typed-one-or-thousand = { $typed }: { $one } { $unit }, or { $thousand } { $unit }? Write { $write } or { $thousand }
typed-either-way = { $typed }: write { $value }, without three digits after the mark
typed-grouped = { $typed }: write one mark for the decimals and nothing between thousands, such as 1000.5
typed-too-high = { $typed } is more than { $most } { $unit }, the most that can be saved: correct it
typed-no-tag = this is not a Stillbar tag: a tag has { $length } characters and begins with { $mark }
typed-tag-check = the check character does not fit: read or type the tag again
