### Rules of a company. A place in the file stands before what is wrong with it, as "case-placed" says.

company-too-large = it is larger than { $most } bytes, the most that is read; leave out what a job does not need.
company-empty = it is empty; write at least {"{"}"company":"Your company","version":"1"{"}"}.
# $field is a name of the format.
company-missing = the field "{ $field }" is missing; add it.
company-text = a text of 1 to { $most } characters that says something belongs here, without line breaks, blanks around it or characters that cannot be seen.
company-too-many = at most { $most } are taken here; shorten it.
# $code stands in quotation marks; $known are codes.
company-no-question = { $code } is no question of this version; those that can be asked in every job are { $known }.
company-of-its-own = { $code } is asked of a point, of a source, of one system or before one act, and says nothing elsewhere; those that can be asked in every job are { $known }.
company-twice = { $what } is there twice; keep one.
# $limit is limit-too-high.
company-limit = { $limit }; rules of a company only make it tighter.
company-limit-unruled = name the rule that sets the limit, as your company calls it.
company-minutes = whole minutes from 1 to { $most } belong here: a company sets less than the app allows, not more.
company-code = a code has small letters, digits and single hyphens, such as keys-counted, and at most 40 characters.
company-number = a telephone number has at least three digits, and beside them only + ( ) / - * # and blanks.
# $version stands in quotation marks.
company-version-taken = version { $version } says something else already; give what has changed a version of its own.
company-held = These rules hold at this site already. Nothing was changed.

company-version = { $company }, version { $version } ({ $short })
company-ppe = { $company }: { $text }
# On a button; $who is whom the company wants called.
company-ring = Ring { $who }

company-label = Rules of
company-sha256 = SHA-256
company-always = Asked in every job
company-limit-label = Limit for dead
company-between = Between two proofs
company-holds = A proof holds
company-at-most = at most { $minutes } min
company-before-opening = Wear before a point is opened
company-before-dead-test = Wear until dead is proved
company-before-work = Wear before the work
company-before-restoring = Wear before restoring
company-point-isolate = Own point, before isolating
company-point-work = Own point, before the work
company-point-restore = Own point, before restoring
company-point = { $text }{ $skip ->
    [yes] {" "}(may be skipped, with a reason)
   *[no] {""}
}
company-call = Call
company-called = { $who }: { $number }
