# A draft that no licensed electrician has checked.

### What the judge finds in readings: why the verdict is what it is, and what may be behind them.

judge-failed-before = Der Spannungsprüfer hat die Funktionsprüfung vor den Prüfungen nicht bestanden: kein Messwert zählt. Gilt als unter Spannung stehend.
judge-failed-after = Der Spannungsprüfer hat die Funktionsprüfung nach den Prüfungen nicht bestanden: kein Messwert seit der ersten zählt. Gilt als unter Spannung stehend.
judge-reference-failed = Der Nachweis des Bezugsleiters ist gescheitert: was darauf beruht, zählt nicht.
# $at is a pair or a place; $dc whether it is direct voltage.
judge-read =
    { $dc ->
        [yes] { $at }: { $volts } V DC gemessen.
       *[no] { $at }: { $volts } V gemessen.
    }
judge-read-limit =
    { $dc ->
        [yes] { $at }: { $volts } V DC gemessen; der Grenzwert ist { $limit } V.
       *[no] { $at }: { $volts } V gemessen; der Grenzwert ist { $limit } V.
    }
judge-lit-to =
    { $dc ->
        [yes] { $at }: leuchtete bis { $volts } V DC.
       *[no] { $at }: leuchtete bis { $volts } V.
    }
judge-lit =
    { $dc ->
        [yes] { $at }: der Spannungsprüfer leuchtete, DC.
       *[no] { $at }: der Spannungsprüfer leuchtete.
    }
judge-lit-more =
    Ebenso { $more ->
        [one] 1 weitere Messung
       *[other] { $more } weitere Messungen
    }.
judge-all-read = Alle { $pairs } Paare wurden ohne jede Anzeige gemessen, und der Spannungsprüfer funktionierte vorher und nachher.
# $limits is one limit or two.
judge-all-read-limit = Alle { $pairs } Paare wurden gemessen, ohne dass ein Spannungsprüfer leuchtete oder eine Zahl über { $limits } lag, und der Spannungsprüfer funktionierte vorher und nachher.
judge-limit = { $volts } V { $current }
judge-reference =
    Der Bezugsleiter ist als Erde nachgewiesen: { $way ->
        [known-line] ein bekannter Außenleiter unter Spannung zeigte dagegen seine volle Spannung
        [second-earth] gegen eine zweite, unabhängige Erde gemessen
        [continuity] der Weg zur Haupterdungsschiene wurde gemessen
       *[none] nicht gezeigt
    }.
judge-low-impedance = Ein niederohmiger Prüfer zieht eine Störspannung nur herunter, solange er anliegt.

neutral-joined = { $neutral } ist getrennt und trotzdem mit { $earth } verbunden: eine zweite N-PE-Brücke, oder ein von einem anderen Stromkreis mitbenutzter Neutralleiter.
neutral-joined-tt = { $neutral } ist getrennt und trotzdem mit { $earth } verbunden: ein Fehler zwischen beiden hinter der Freischaltstelle.
neutral-joined-it = { $neutral } ist mit { $earth } verbunden, obwohl die Versorgung nicht geerdet ist: ein erster Fehler, oder kein IT-System.
neutral-not-joined = { $neutral } ist nicht getrennt und nicht mit { $earth } verbunden: einer der beiden ist zwischen hier und der N-PE-Brücke unterbrochen.
neutral-no-continuity = { $neutral } ist nicht getrennt, und kein Durchgang zu { $earth } war zu sehen: der Spannungsprüfer zeigt keinen an, oder einer der beiden ist zwischen hier und der N-PE-Brücke unterbrochen.

# What may be behind the readings; $which are conductors.
cause-no-voltage = Die Messwerte sind so, wie Leiter auf einem Potential sie geben.
cause-neutral-drop = { $which }: wenige Volt gegen Erde, wie sie der Strom anderer Stromkreise macht, die den Leiter mitbenutzen.
cause-not-isolated = { $which }: Messwerte, als wäre nichts geöffnet.
cause-one-line-live = { $which }: unter Spannung; die anderen Außenleiter sind nicht gespeist.
cause-two-lines-live = { $which }: unter Spannung; der dritte Außenleiter ist nicht gespeist oder hängt über Lasten daran.
cause-backfeed = { $which }: auf einem Potential, weg von Neutralleiter und Erde: ein Außenleiter speist alle über Lasten oder Wicklungen.
cause-open-neutral = Die Versorgung steht unter Spannung; neben dem Sternpunkt liegt: { $which }, auf der Versorgungsseite unterbrochen und von den Lasten gezogen.
cause-borrowed-neutral = { $which }: unter Spannung, während die Außenleiter dieses Stromkreises nicht gespeist sind: eine Last eines anderen Stromkreises nutzt ihn als Rückleiter.
cause-other-source = { $which }: Messwerte wie aus einer Quelle, die nicht zur freigeschalteten Versorgung gehört: andere Phase oder Gegenphase.
cause-floating-supply = Die Außenleiter stehen unter Spannung, auf einer nicht geerdeten Versorgung. Messwerte gegen Erde hängen von Kapazität und Isolation ab und besagen hier nichts.
cause-broken-reference = { $which }: nicht da, wo Erde sein soll; der Bezugsleiter ist unterbrochen, schwebt oder steht selbst unter Spannung.
cause-induced = { $which }: Messwerte wie von spannungsfreien Adern neben solchen unter Spannung: kapazitiv eingekoppelt.
# $which is a pair.
cause-misplaced = Die Messung { $which } passt nicht zu den anderen: keine Potentiale ergeben alle zusammen.
# $which are pairs and places.
cause-direct-voltage = Gleichspannung an: { $which }. Gespeicherte Energie, eine Batterie oder eine andere DC-Quelle.
cause-unexplained = Keine hier bekannte Ursache ergibt diese Messwerte.
# Behind a cause where many conductors were read.
cause-of-most = (Ermittelt aus den { $count } Leitern mit den höchsten Messwerten.)
the-lines = Außenleiter

# What to do about each.
next-no-voltage = Jede Anzeige zählt als Spannung, bis für das Paar wieder Spannungsfreiheit festgestellt ist.
next-neutral-drop = Gilt als unter Spannung stehend. Suchen, welche Stromkreise diesen Neutralleiter mitbenutzen; er muss getrennt oder deren Last abgeschaltet werden.
next-not-isolated = Stopp. Prüfen, ob dies die richtige Freischaltstelle für dieses Betriebsmittel ist und ob jeder Pol geöffnet hat.
next-one-line-live = Stopp. Nach einem nicht geöffneten Pol, einem verschweißten Kontakt oder einer zweiten Einspeisung auf diesen Außenleiter suchen.
next-two-lines-live = Stopp. Jeden Pol des Schalters und jede Sicherung prüfen; nach einer zweiten Einspeisung suchen.
next-backfeed = Stopp. Die Einspeisung auf der Lastseite suchen (Steuerstromkreis, Brücke, kleine Quelle) und auch freischalten.
next-open-neutral = Stopp. Die Außenleiter stehen unter Spannung, und der Neutralleiter ist so gefährlich wie ein Außenleiter. An der Versorgung freischalten; keine Lasten wieder anschließen.
next-borrowed-neutral = Stopp. Den Stromkreis suchen, der diesen Neutralleiter mitbenutzt, auch freischalten und neu prüfen.
next-other-source = Stopp. Nach Generator, Wechselrichter, Batterieversorgung oder zweiter Einspeisung suchen und freischalten.
next-floating-supply = Stopp. Freischalten; nach den Messwerten zwischen den Außenleitern gehen; einen ersten Erdschluss suchen.
next-broken-reference = Stopp, Metallteile nicht berühren. Erde gegen eine bekannte Quelle oder eine zweite Erde nachweisen, dann neu prüfen.
next-induced = Zählt als unter Spannung stehend. Niederohmig neu messen; es bleibt so, bis jedes Paar nichts zeigt. Den benachbarten Stromkreis freischalten oder den Leiter erden.
next-misplaced = Gilt als unter Spannung stehend. Die genannten Paare wiederholen, die Klemmen dabei laut ansagen; Spannungsprüfer vorher und nachher auf Funktion prüfen.
next-neutral-earth = Klären, warum, bevor irgendetwas anderes geschieht.
next-direct-voltage = Stopp. Wartezeit der Aufschrift abwarten, DC neu messen und die Quelle freischalten, wenn sie nicht sinkt.
next-unexplained = Gilt als unter Spannung stehend. Nach einer zweiten Einspeisung suchen, dann den Spannungsprüfer auf Funktion prüfen und jedes Paar neu prüfen.

# The drawing of the potentials, in words.
middle-earth = Erde
middle-supply = Mitte der Versorgung
# $several: whether $names are more than one conductor.
dot-at-middle =
    { $names } { $several ->
        [yes] liegen
       *[no] liegt
    } auf: { $middle }
dot-off-middle =
    { $names } { $several ->
        [yes] liegen
       *[no] liegt
    } { $volts } V weg von: { $middle }
dots = Potentiale, die zu den Messwerten passen: { $dots }. Richtungen sind nur relativ.
