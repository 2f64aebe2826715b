### What is asked while the supply comes back.

ask-restore-warned-who = Write who was warned.
ask-restore-warned-how = Write how they were warned.
ask-restore-beside = Write why both supplies go on together.
ask-restore-back-to = Write who takes the installation back.
ask-restore-reading = Enter at least one reading, and then keep it.
ask-restore-rotation = Choose which way it turns.
ask-restore-rotation-guard = Not read before: uncouple what turns, or watch a short bump. Choose which you did.
ask-restore-rotation-how = Write how you know the rotation, or why it is not needed.
ask-restore-odd = Mark which readings this is about.
ask-restore-answer = Choose what becomes of it.
ask-restore-answer-who = Write who accepts it, what is left off, or what was wrong.
ask-restore-answer-how = Write how they were told, how it stays off, or what was mended.
