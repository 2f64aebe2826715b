# A draft that no licensed electrician has checked.

### Rule sets: what is said of each. How sure: A read in a copy or an excerpt, B from memory or common practice, C unsure. The figures are in
### `RuleSet::figures`. Names of laws and standards stay as they are in every language.

# $law is one of the -law messages, $standards one of the -standards messages.
# life-critical
rules-defer = Recht: { $law }. Normen und Leitlinien: { $standards }. Diese und wer zu ihrer Anwendung zugelassen ist, gehen vor. Niemand mit Zulassung hat die Regeln dieser App geprüft.
# On the page of a job, where a line has to do.
rules-in-short = { $name }. Örtliche Regeln und Personen mit Zulassung gehen vor.
# On the first screen, and wherever no country is picked.
# life-critical
rules-defer-none = Örtliche Regeln und Personen mit Zulassung gehen vor. Niemand mit Zulassung hat die Regeln dieser App geprüft.

rules-uk-name = Vereinigtes Königreich
rules-uk-law = Electricity at Work Regulations 1989, regulations 4, 12, 13, 14 und 16 (in Nordirland die von 1991)
rules-uk-standards = HSG85, GS38, BS EN 50110-1, BS 7671
rules-uk-measured = Anschlussklemmen der Versorgung; ein einzelner Messwert ist ein Hinweis, die Grenzen gelten für Mittelwerte
rules-uk-colours = Außenleiter braun, schwarz, grau; N blau; PE grün-gelb. Vor 2006 rot, gelb, blau; N schwarz
rules-uk-instruments = Zweipoliger Spannungsprüfer, Leitungen nach GS38: Fingerschutz, höchstens 4 mm blanke Spitze, mit Sicherung, wo ein Multimeter benutzt wird
rules-uk-removal = Kein Gesetz sagt, wie: nach dem Verfahren dessen, der die Gefahr beherrscht, durch eine benannte befugte Person, die Person, Arbeit und Stelle geprüft hat
rules-uk-sure = A für die Leitlinien, B für die Vorschriften
rules-uk-sources = Toleranz: IEE Regulations, appendix 2, aus einem Auszug; ESQCR 2002 regulation 27, Nummer aus dem Gedächtnis. 110 V auf Baustellen: BS 7671 411.8, aus einem Auszug. 50 V und 120 V: IEC 61140, aus dem Gedächtnis. Farben: BS 7671, Jahreszahlen aus einem Auszug. Prüfgerät: GS38, aus einem Zitat. Reihenfolge: keine Quelle

rules-ie-name = Irland
rules-ie-law = S.I. 299 of 2007, Part 3, regulations 85 (Freischalten) und 86 (Arbeit an spannungsfreien und unter Spannung stehenden Betriebsmitteln)
rules-ie-standards = HSA guide to Part 3, EN 50110-1, I.S. 10101
rules-ie-measured = Anschlussklemmen der Versorgung; innerhalb der Anlage kommt der Spannungsfall dazu
rules-ie-colours = Außenleiter braun, schwarz, grau; N blau; PE grün-gelb. Älter: rot, gelb, blau; N schwarz
rules-ie-instruments = Zweipoliger Spannungsprüfer (EN 61243-3)
rules-ie-removal = Kein Gesetz sagt, wie: nach dem Verfahren dessen, der über die Arbeit bestimmt
rules-ie-sure = A für die Vorschriften, B für das Übrige
rules-ie-sources = Toleranz: EN 50160 und IEC 60038, aus Auszügen. 110 V auf Baustellen: BS 7671 411.8, aus einem Auszug. 50 V und 120 V: IEC 61140, aus dem Gedächtnis. Recht: S.I. 299 of 2007, gelesen. Farben, Prüfgerät: aus dem Gedächtnis. Reihenfolge: keine Quelle

rules-eu-name = Europäische Union
rules-eu-law = Richtlinien 89/391/EWG und 2009/104/EG und das nationale Recht dazu
rules-eu-standards = EN 50110-1 mit dem nationalen Teil der EN 50110-2, HD 60364
rules-eu-measured = Anschlussklemmen der Versorgung; innerhalb der Anlage kommt der Spannungsfall dazu
rules-eu-colours = Außenleiter braun, schwarz, grau; N blau; PE grün-gelb. Ältere Farben sind von Land zu Land verschieden
rules-eu-instruments = Zweipoliger Spannungsprüfer (EN 61243-3), unmittelbar vor dem Benutzen geprüft
rules-eu-removal = Nach dem Verfahren des Betreibers: wieder einschalten erst nach der Freimeldung des Arbeitsverantwortlichen (EN 50110-1, 6.2.8)
rules-eu-sure = A für Titel, B für das Übrige
rules-eu-sources = Toleranz: EN 50160 und IEC 60038, aus Auszügen. 50 V und 120 V: IEC 61140, aus dem Gedächtnis. Farben: IEC 60445, aus einem Auszug. Prüfgerät: Anwendungsbereich der EN 61243-3, gelesen. Entfernung: Titel eines Abschnitts der EN 50110-1. Reihenfolge: keine Quelle

rules-de-name = Deutschland
rules-de-law = ArbSchG, BetrSichV, DGUV Vorschrift 3
rules-de-standards = DIN VDE 0105-100: fünf Regeln der Reihe nach, zurück in umgekehrter Reihenfolge
rules-de-measured = Anschlussklemmen der Versorgung (DIN EN 50160); innerhalb der Anlage kommt der Spannungsfall dazu
rules-de-colours = Außenleiter braun, schwarz, grau; N blau; PE grün-gelb. Vor etwa 1965 Außenleiter schwarz, N grau, PE rot
rules-de-instruments = Zweipoliger Spannungsprüfer (DIN EN 61243-3), unmittelbar vor dem Benutzen geprüft, allpolig; ein einpoliger Phasenprüfer ist keiner
rules-de-removal = Nach dem Verfahren des Betreibers, durch Anlagenverantwortlichen und Arbeitsverantwortlichen
rules-de-sure = A für die fünf Regeln, B für das Übrige
rules-de-sources = Toleranz: EN 50160 und IEC 60038, aus Auszügen. 50 V und 120 V: IEC 61140, aus dem Gedächtnis. Fünf Regeln: Seite einer Berufsgenossenschaft, gelesen. Farben: IEC 60445, ältere aus dem Gedächtnis. Reihenfolge: keine Quelle

rules-us-name = Vereinigte Staaten
rules-us-law = 29 CFR 1910.331 bis .335 für elektrische Gefahren, 1910.147 für das Übrige, 1926.416 und .417 auf Baustellen; Pläne der Bundesstaaten
rules-us-standards = NFPA 70E, article 120; NEC
rules-us-measured = Übergabestelle (Bereich A); am Betriebsmittel ist es weniger
rules-us-colours = Geerdeter Leiter weiß oder grau, Schutzleiter grün, blank oder grün-gelb, hoher Außenleiter orange; Außenleiter nur nach Gewohnheit
rules-us-instruments = Tragbares Messgerät, bemessen für Spannung und Kategorie, jeder Außenleiter oder Teil des Stromkreises, Phase gegen Phase und Phase gegen Erde, vorher und nachher an einer bekannten Quelle auf Funktion geprüft
rules-us-removal = 29 CFR 1910.333(b)(2)(v)(C) für elektrische Arbeit: eine dafür bestimmte qualifizierte Person, der Inhaber nicht am Arbeitsplatz und vor dem Weiterarbeiten dort informiert; daneben 1910.147(e)(3). Alles aus beiden befolgen
rules-us-sure = A für 1910.333, B für das Übrige
rules-us-sources = Toleranz: ANSI C84.1 Bereich A, aus dem Gedächtnis. 50 V: 29 CFR 1910.333(a)(1) und NFPA 70E, aus Auszügen. Entfernung: Text von 1910.333(b)(2)(v)(C) in der Abschrift eines Bundesstaats, und von 1910.147(e)(3). Prüfgerät: NFPA 70E 120.6, aus Auszügen. Farben: NEC, aus dem Gedächtnis außer 210.5(C). Reihenfolge: Gewohnheit, keine Quelle

rules-ca-name = Kanada
rules-ca-law = Das Recht der Provinz oder des Territoriums, z. B. O. Reg. 851 und 213/91, BC Reg. 296/97 parts 10 und 19, Albertas OHS Code part 15
rules-ca-standards = CSA Z462, CSA Z460, CEC C22.1
rules-ca-measured = nur am Anschlusspunkt; die Zahlen von CSA C235:19 waren nicht lesbar, die von ANSI C84.1 stehen dafür
rules-ca-colours = Außenleiter rot, schwarz, blau; N weiß; Erde grün
rules-ca-instruments = Wie NFPA 70E, auf deren Text CSA Z462 aufbaut
rules-ca-removal = Je nach Provinz: in British Columbia hat der Vorgesetzte einen zweiten Schlüssel, versucht mit allem vertretbaren Aufwand, die Person zu erreichen, und informiert sie zur nächsten Schicht
rules-ca-sure = A für Anwendungsbereich und Titel, C für Zahlen
rules-ca-sources = Toleranz: die von ANSI C84.1; CSA C235:19 war nicht lesbar, ungewiss. 30 V und 60 V: CSA Z462, aus dem Gedächtnis, ungewiss. Entfernung: Überschriften von Provinzregeln. Farben: CEC 4-032, aus dem Gedächtnis, ungewiss. Reihenfolge: Gewohnheit, keine Quelle

rules-au-name = Australien
rules-au-law = Model WHS Regulations, part 4.7 (154 bis 166), und das Elektrizitätsrecht des Bundesstaats
rules-au-standards = Code of practice Managing electrical risks in the workplace, AS/NZS 4836, AS/NZS 3000
rules-au-measured = Übergabestelle der Versorgung
rules-au-colours = Außenleiter rot oder braun, wahlweise rot, weiß, dunkelblau; N schwarz oder hellblau; E grün-gelb. Schwarz ist im selben Land N oder ein Außenleiter
rules-au-instruments = Geeignetes Messgerät, vorher und nachher auf Funktion geprüft, jeder freiliegende Leiter gegen Erde und gegen die anderen
rules-au-removal = Nur die genannte Person; sonst mit dem Formular des Arbeitgebers dafür, durch den Vorgesetzten, jeder Anhänger gemeldet, bevor eingeschaltet wird
rules-au-sure = A für die Seiten aus Queensland, C für Farben
rules-au-sources = Toleranz: AS 60038, aus dem Gedächtnis. 50 V und 120 V: IEC 61140, aus dem Gedächtnis. Farben: AS/NZS 3000 table 3.4, von Seiten, die einander widersprechen. Prüfgerät: Seiten einer Aufsichtsbehörde, gelesen. Reihenfolge: Gewohnheit, keine Quelle

rules-nz-name = Neuseeland
rules-nz-law = Electricity Act 1992, Electricity (Safety) Regulations 2010 in geänderter Fassung, Health and Safety at Work Act 2015
rules-nz-standards = AS/NZS 4836, AS/NZS 3000 mit den Teilen für Neuseeland
rules-nz-measured = Übergabestelle der Versorgung; ±10 % seit 13. November 2025
rules-nz-colours = Phasen rot, weiß, blau oder braun, schwarz, grau; N schwarz oder hellblau; E grün-gelb. Schwarz ist im selben Land N oder ein Außenleiter
rules-nz-instruments = Geeignetes Messgerät, vorher und nachher auf Funktion geprüft, jeder freiliegende Leiter gegen Erde und gegen die anderen
rules-nz-removal = Nur die genannte Person; sonst nach dem Verfahren des Arbeitgebers, durch den Vorgesetzten
rules-nz-sure = A für die Toleranz, C für Farben
rules-nz-sources = Toleranz: Ankündigung vom November 2025, die Vorschrift nicht gesehen. 50 V und 120 V: IEC 61140, aus dem Gedächtnis. Farben: AS/NZS 3000, von Seiten, die einander widersprechen. Reihenfolge: Gewohnheit, keine Quelle

rules-own-name = Regeln des Standorts selbst
rules-own-law = Das Recht und die Regeln, die am Standort gelten
rules-own-standards = Die des Standorts
rules-own-measured = wo die Regeln des Standorts es sagen
rules-own-colours = Wie am Standort
rules-own-instruments = Wie die Regeln des Standorts es sagen
rules-own-removal = Wie die Regeln des Standorts es sagen
rules-own-sure = Nichts wird behauptet
rules-own-sources = Zahlen: IEC 60038 und IEC 61140, wie für die Europäische Union. Alles andere: was immer die Regeln des Standorts sagen
