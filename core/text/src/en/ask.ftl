### What is asked before an act can be done, with what was given in it, and what kept an act from being done.

ask-shorter = That is too long: at most { $most } characters. { $ask }
ask-listed = "{ $name }" is already listed here. Add something that tells the two apart.
ask-minutes = Write whole minutes, 1 to { $most }.
ask-signs = { $name } signs in the box first.
ask-signs-as-themselves = { $typed } is not the name of { $name }, who signs here. { $name } types their own name, or draws.
ask-not-marked = Not marked: { $parts }. Look at that too and mark it. If something is not sound, write below what it is, and keep that.
ask-part-named = { $id } is in the network already. Give another name, or correct that part.
# Why is what is wrong with a figure or a tag that was typed: it begins small and has no full stop.
ask-volts = { $why }.
ask-volts-of = { $first } – { $then }: { $why }
ask-volts-back = { $first } – { $then }: { $why }.
ask-tag-text = { $why }.
# $why is what is wrong with the file, with its place.
ask-company = The file was not taken in. { $why }
ask-pin-wait = Wait { $seconds } s, then try again.
ask-pin-of = That is not the PIN of { $name }. Wait { $seconds } s, then try again.
ask-pin-digits = A PIN has { $from } to { $to } digits and nothing else.
pin-unkept = The PIN could not be kept ({ $why }). Go on without.
photo-unwritten = The photo could not be written: { $why }. Free some space and take it again.
record-unwritten = The record could not be written to disk: { $why }. Free some space and try again.
padlock-stays-beside = The same padlock is on { $place }, for { $job }. { $why }
