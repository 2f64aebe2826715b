### Giving up an isolation before the work is done, from wherever it stands.

give-up-title = Give up this isolation
give-up-given-up = Given up
give-up-given-up-why = { $why } ({ $by })
give-up-finished = Work is finished: restore the supply step by step.
# life-critical
give-up-at-work = Work is under way. Stop work first, and get everybody clear.
give-up-stop-work = Stop work first
give-up-nothing-open = Nothing is open yet: there is nothing to give up.
# life-critical
give-up-live = Treat as live. Nothing is proved from now on, and nobody works here.
give-up-then = Then: covers back, people warned, locks off by their owners. Close only what was found on.
give-up-why = Why it is given up
give-up-why-hint = The cause was not found, no time left
give-up-clear = How you saw that everybody is clear
give-up-clear-hint = Counted people and tools, looked into the panel
# life-critical
give-up-done = The isolation is given up. Treat as live. Covers back, locks off, then close what was on.
