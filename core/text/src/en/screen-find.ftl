### A long list that is narrowed by words.

find-words = Find in this list
find-words-hint = Any words: who, where, what
find-look = Find
# A part that is taken for the whole hides locks.
# life-critical
find-shown = { $shown } of { $all } are shown here. The others are left out.
find-all = Show all
