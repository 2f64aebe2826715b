### What stands where an earlier job's words are offered again. Nothing of an earlier job counts before a person has said it anew.

# $label: the label of the field. Above answers that were given there before.
said-before = { $label }: as before
like-heading = Like an earlier job
like = Like: { $title }
# The short form of a new job.
like-what = As in { $title }. Check each line; what is not so, change.
like-none = Not like it
like-change = Change these
taken-along = Take along: untap what is not so
# $name: who answers for the isolation.
like-opened = Job opened. { $name } is in charge of the isolation. Every source, reading and lock is asked anew.
taken-no-permit = No permit: { $why }
taken-person = { $name }: { $duty }
taken-point = Point: { $label }, { $at }
taken-circuit = Switch off first: { $label }, { $serves }
taken-no-circuits = Nothing to switch off first: { $why }
where-of = { $equipment }. { $place }
told-again = Told now: { $who }, { $how }
barrier-again = Stands now: { $what }, { $at }
this-shift = This shift
checked-this-shift = { $name }, checked { $at }
looked-over-again = Looked over again: leads, tips, cases sound, in date
