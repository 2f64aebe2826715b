### What a company and its sites set: the limit for dead, how old a proof may get, the company's own rules.

# $limit is the message limit-set.
ruled-limit-none-short = No limit for dead is set.
# life-critical
ruled-limit-none = No limit is set: every figure other than 0 counts as an indication.
ruled-title = Rules of your company and sites
ruled-limit = Limit for dead
# life-critical
ruled-limit-holds = For jobs opened from now on. A lamp that lights is an indication, whatever the limit.
ruled-save-limit = Save the limit, signed by { $name }
ruled-ask = Ask who is responsible
ruled-age = How old a proof may get
# Minutes. "Our rule": no standard that was found names figures.
ruled-age-most = At most { $between } min between two proofs of the indicator, and { $holds } min for a proof (our rule, no source). A site may set less.
ruled-a-site = A site
ruled-site-set = { $between } min between proofs, { $holds } min for a proof
ruled-site = Site
ruled-between = Minutes between two proofs
ruled-holds = Minutes that a proof holds
ruled-minutes-hint = 1 to { $most }
ruled-save-site = Save for this site, signed by { $name }
# In the place of a name.
ruled-nobody = nobody yet
ruled-limit-ac = Limit in volts AC
ruled-limit-ac-hint = Below 50, such as 10
ruled-limit-dc = Limit in volts DC
ruled-limit-dc-hint = Below 120, such as 10
ruled-limit-rule = Rule that sets it
ruled-limit-rule-hint = As your company calls it, with its date
# A text that is sent to the person who is responsible.
ruled-ask-text = We prove dead with a two-pole voltage indicator. Which figure counts as no voltage at our sites? Please name a limit in volts AC (below 50) and one in volts DC (below 120), and the rule that sets them. Until then every figure other than 0 counts as an indication.
ruled-asked = The text is ready to send. No limit is set until somebody saves one under Rules.
ruled-change = The limit for dead changes
ruled-change-charge = Only { $name } changes it, who is in charge of this isolation.
# life-critical
ruled-change-ends = Changing it ends the proof.
ruled-change-limit = Change the limit, signed by { $name }
ruled-no-limit = No limit: only 0 counts, signed by { $name }

# Rules of a company.
ruled-company-heading = Rules of your company
ruled-company-none = No site has company rules here. The office sends them, or paste their file.
ruled-company-version-by = { $version } ({ $by })
ruled-company-hold = For jobs opened from now on. They only ask for more, or set less.
ruled-company-site = Site of the file
ruled-company-file-field = File of rules
ruled-company-file-hint = The whole text of the file that your company gave you
ruled-company-save = Save this file, signed by { $name }
# $version is which rules, of which company.
ruled-company-saved = { $version }. Jobs opened here from now on are done by it.
ruled-company-of-job = Company rules
ruled-company-newer = New jobs here are done by { $version }. This one goes on by those that it was opened with.
# On the page of a job that was opened where no rules of a company were known.
ruled-company-none-known = No company rules were known when this job was opened.
# The same, once some were heard of. $when says when, and by whom.
ruled-company-heard = No company rules were known when this job was opened. It is done by these since they were heard of: { $when }.
ruled-company-whom-to-call = Whom to call
ruled-company-ringing = Ringing { $who }.
