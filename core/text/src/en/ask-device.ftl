### What is asked about the device itself: who has it, PINs, the office, the rules.

ask-device-who-first = Say who you are first. What you did goes on after that.
ask-device-name = Write the person's name.
ask-device-shorter = Write it shorter.
ask-device-pin = Type your PIN.
ask-device-pin-new = Type a new PIN.
ask-device-pin-twice = The two are not the same. Type the new PIN twice.
ask-device-pin-there = You have a PIN here. Type it, or set it anew with a witness.
ask-device-pin-unset = No PIN is set here. Set one.
ask-device-pin-unreadable = The PIN kept here cannot be read. Set it anew with a witness.
ask-device-pin-by-no-chance = The system gave no random bytes, so no PIN can be set. Go on without.
ask-device-witness = Choose who is the witness.
ask-device-witness-is-other = The witness is somebody else.
ask-device-witness-pin = The witness types their PIN.
ask-device-office-as-witness = Type the code that the office made for this.
ask-device-office-code = Scan the code that the office shows, or copy it: it begins with stillbar-enrol.
ask-device-office-code-whole = This is not the code of an office. Ask there for one, and type all of it.
ask-device-office-code-of-ours = This code is of another office than this device's. Ask your own office for one.
ask-device-office-not = This is not the code of an office.
ask-device-tag = Write the 16 characters that are printed beside the tag.
ask-device-site = Choose the site.
ask-device-limit-ac = Write the limit in volts AC.
ask-device-limit-dc = Write the limit in volts DC.
ask-device-clock-uncontradicted = No other phone contradicts this clock now.
ask-device-key-goes-on = This phone has forgotten nothing: its key goes on.
