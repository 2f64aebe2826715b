### What is asked while a point is opened and secured, about its photos and its tags too.

ask-isolate-apart = Write by what the two are told apart, here at the spot.
ask-isolate-off-load = Choose whether it was opened off load.
ask-isolate-found = Say how you found it: on, or off already.
ask-isolate-seen = Write what you saw go off when the point was opened.
ask-isolate-photo-why = Write why this photo is kept although it shows another point's tag.
ask-isolate-tag-moved-why = Write why the tag hangs here now.
