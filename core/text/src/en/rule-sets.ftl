### Rule sets: what is said of each. How sure: A read in a copy or an excerpt, B from memory or common practice, C unsure. The figures are in
### `RuleSet::figures`. Names of laws and standards stay as they are in every language.

# $law is one of the -law messages, $standards one of the -standards messages.
# life-critical
rules-defer = Law: { $law }. Standards and guidance: { $standards }. These, and whoever is licensed to apply them, come first. Nobody licensed has checked this app's rules.
# On the page of a job, where a line has to do.
rules-in-short = { $name }. Local rules and a licensed person come first.
# On the first screen, and wherever no country is picked.
# life-critical
rules-defer-none = Local rules and a licensed person come first. Nobody licensed has checked this app's rules.

rules-uk-name = United Kingdom
rules-uk-law = Electricity at Work Regulations 1989, regulations 4, 12, 13, 14 and 16 (in Northern Ireland those of 1991)
rules-uk-standards = HSG85, GS38, BS EN 50110-1, BS 7671
rules-uk-measured = supply terminals; one reading is a flag, the limits are for means
rules-uk-colours = Lines brown, black, grey; N blue; PE green-yellow. Before 2006 red, yellow, blue; N black
rules-uk-instruments = Two-pole voltage indicator, leads as in GS38: finger guards, at most 4 mm of bare tip, fused where a multimeter is used
rules-uk-removal = No statute says how: by the procedure of who controls the danger, through a named authorised person who has checked person, work and point
rules-uk-sure = A for the guidance, B for the regulations
rules-uk-sources = Tolerance: IEE Regulations, appendix 2, from an excerpt; ESQCR 2002 regulation 27, number from memory. 110 V on sites: BS 7671 411.8, from an excerpt. 50 V and 120 V: IEC 61140, from memory. Colours: BS 7671, dates from an excerpt. Instrument: GS38, from a quotation. Order: no source

rules-ie-name = Ireland
rules-ie-law = S.I. 299 of 2007, Part 3, regulations 85 (isolation) and 86 (work on dead and live equipment)
rules-ie-standards = HSA guide to Part 3, EN 50110-1, I.S. 10101
rules-ie-measured = supply terminals; inside the installation the drop comes on top
rules-ie-colours = Lines brown, black, grey; N blue; PE green-yellow. Older: red, yellow, blue; N black
rules-ie-instruments = Two-pole voltage detector (EN 61243-3)
rules-ie-removal = No statute says how: by the procedure of who controls the work
rules-ie-sure = A for the regulations, B for the rest
rules-ie-sources = Tolerance: EN 50160 and IEC 60038, from excerpts. 110 V on sites: BS 7671 411.8, from an excerpt. 50 V and 120 V: IEC 61140, from memory. Law: S.I. 299 of 2007, read. Colours, instrument: from memory. Order: no source

rules-eu-name = European Union
rules-eu-law = Directives 89/391/EEC and 2009/104/EC, and the national law under them
rules-eu-standards = EN 50110-1 with the national part of EN 50110-2, HD 60364
rules-eu-measured = supply terminals; inside the installation the drop comes on top
rules-eu-colours = Lines brown, black, grey; N blue; PE green-yellow. Older colours differ from country to country
rules-eu-instruments = Two-pole voltage detector (EN 61243-3), tested just before use
rules-eu-removal = By the operator's procedure: energised again only after the person in charge of the work has reported clear (EN 50110-1, 6.2.8)
rules-eu-sure = A for titles, B for the rest
rules-eu-sources = Tolerance: EN 50160 and IEC 60038, from excerpts. 50 V and 120 V: IEC 61140, from memory. Colours: IEC 60445, from an excerpt. Instrument: scope of EN 61243-3, read. Removal: title of a clause of EN 50110-1. Order: no source

rules-de-name = Germany
rules-de-law = ArbSchG, BetrSichV, DGUV Vorschrift 3
rules-de-standards = DIN VDE 0105-100: five rules in order, taken back in reverse
rules-de-measured = supply terminals (DIN EN 50160); inside the installation the drop comes on top
rules-de-colours = Lines brown, black, grey; N blue; PE green-yellow. Before about 1965 lines black, N grey, PE red
rules-de-instruments = Two-pole voltage detector (DIN EN 61243-3), tested just before use, on all poles; a one-pole tester is none
rules-de-removal = By the operator's procedure, through the person in charge of the installation and of the work
rules-de-sure = A for the five rules, B for the rest
rules-de-sources = Tolerance: EN 50160 and IEC 60038, from excerpts. 50 V and 120 V: IEC 61140, from memory. Five rules: a page of a statutory insurer, read. Colours: IEC 60445, older ones from memory. Order: no source

rules-us-name = United States
rules-us-law = 29 CFR 1910.331 to .335 for electrical hazards, 1910.147 for the rest, 1926.416 and .417 on construction sites; state plans
rules-us-standards = NFPA 70E, article 120; NEC
rules-us-measured = service point (range A); at the equipment it is lower
rules-us-colours = Grounded conductor white or grey, equipment ground green, bare or green-yellow, high leg orange; lines by custom only
rules-us-instruments = Portable test instrument rated for voltage and category, each phase conductor or circuit part, phase to phase and phase to ground, proved on a known source before and after
rules-us-removal = 29 CFR 1910.333(b)(2)(v)(C) for electrical work: a qualified person designated for it, the owner not at the workplace and told before resuming there; beside it 1910.147(e)(3). Do all of both
rules-us-sure = A for 1910.333, B for the rest
rules-us-sources = Tolerance: ANSI C84.1 range A, from memory. 50 V: 29 CFR 1910.333(a)(1) and NFPA 70E, from excerpts. Removal: text of 1910.333(b)(2)(v)(C) in a state's copy, and of 1910.147(e)(3). Instrument: NFPA 70E 120.6, from excerpts. Colours: NEC, from memory but for 210.5(C). Order: custom, no source

rules-ca-name = Canada
rules-ca-law = The law of the province or territory, such as O. Reg. 851 and 213/91, BC Reg. 296/97 parts 10 and 19, Alberta's OHS Code part 15
rules-ca-standards = CSA Z462, CSA Z460, CEC C22.1
rules-ca-measured = point of connection only; the figures of CSA C235:19 could not be read, those of ANSI C84.1 stand in
rules-ca-colours = Lines red, black, blue; N white; ground green
rules-ca-instruments = As NFPA 70E, on whose text CSA Z462 is built
rules-ca-removal = By the province: in British Columbia the supervisor holds a second key, makes every reasonable effort to reach the worker, and tells them at the next shift
rules-ca-sure = A for scope and titles, C for figures
rules-ca-sources = Tolerance: that of ANSI C84.1; CSA C235:19 could not be read, unsure. 30 V and 60 V: CSA Z462, from memory, unsure. Removal: headings of provincial rules. Colours: CEC 4-032, from memory, unsure. Order: custom, no source

rules-au-name = Australia
rules-au-law = Model WHS Regulations, part 4.7 (154 to 166), and the electrical law of the state
rules-au-standards = Code of practice Managing electrical risks in the workplace, AS/NZS 4836, AS/NZS 3000
rules-au-measured = point of supply
rules-au-colours = Actives red or brown, by choice red, white, dark blue; N black or light blue; E green-yellow. Black is N or a line in the same country
rules-au-instruments = Instrument suited and proved before and after, each exposed conductor to earth and to the others
rules-au-removal = Only the named person; else by the employer's form for it, through the supervisor, with every tag reported before it is energised
rules-au-sure = A for the Queensland pages, C for colours
rules-au-sources = Tolerance: AS 60038, from memory. 50 V and 120 V: IEC 61140, from memory. Colours: AS/NZS 3000 table 3.4, from pages that contradict each other. Instrument: a regulator's pages, read. Order: custom, no source

rules-nz-name = New Zealand
rules-nz-law = Electricity Act 1992, Electricity (Safety) Regulations 2010 as amended, Health and Safety at Work Act 2015
rules-nz-standards = AS/NZS 4836, AS/NZS 3000 with the New Zealand parts
rules-nz-measured = point of supply; 10 % either way since 13 November 2025
rules-nz-colours = Phases red, white, blue or brown, black, grey; N black or light blue; E green-yellow. Black is N or a line in the same country
rules-nz-instruments = Instrument suited and proved before and after, each exposed conductor to earth and to the others
rules-nz-removal = Only the named person; else by the employer's procedure, through the supervisor
rules-nz-sure = A for the band, C for colours
rules-nz-sources = Tolerance: announcement of November 2025, the regulation not seen. 50 V and 120 V: IEC 61140, from memory. Colours: AS/NZS 3000, from pages that contradict each other. Order: custom, no source

rules-own-name = Rules of the site itself
rules-own-law = The law and the rules that hold at the site
rules-own-standards = Those of the site
rules-own-measured = where the rules of the site say
rules-own-colours = As the site has them
rules-own-instruments = As the rules of the site say
rules-own-removal = As the rules of the site say
rules-own-sure = Nothing is claimed
rules-own-sources = Figures: IEC 60038 and IEC 61140, as for the European Union. All else: whatever the site's rules say
