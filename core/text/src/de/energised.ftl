# A draft that no licensed electrician has checked.

### What does not look as it should with the supply back. $at is a pair, $other what the lines are read to.

odd-line-missing = { $at }: { $volts } V. Ein Außenleiter fehlt: wieder freischalten, dann klären.
odd-neutral-missing = { $at }: { $volts } V. { $other } fehlt oder ist mit einem Außenleiter vertauscht: wieder freischalten, dann klären.
odd-neutral-off = { $other } liegt { $volts } V neben der Mitte der Außenleiter: er fehlt. Wieder freischalten, dann klären.
odd-outside = { $at }: { $volts } V, außerhalb von { $least } bis { $most } V ({ $tolerance }). Klären, warum.
odd-not-at-earth = { $at }: { $volts } V, und dieser Außenleiter sollte an Erde liegen.
odd-at-reference = { $at }: { $volts } V, und der Außenleiter ist da: ein Erdschluss, oder eine Versorgung, deren Außenleiter hier geerdet ist.
odd-not-together = Außenleiter gegeneinander ist das { $ratio }-Fache von Außenleiter gegen { $other } und sollte das { $wanted }-Fache sein. Beide neu messen.
odd-unbalanced = Die Spannungen zwischen den Außenleitern sind um { $percent } % unsymmetrisch. Nach unterbrochenem Neutralleiter oder verlorenem Außenleiter suchen.
odd-delta-corner = { $line }: das sind die Spannungen eines Dreiecks, bei dem dieser Außenleiter geerdet ist. Klären, welche Versorgung das ist.
odd-delta-high-leg = { $line }: das sind die Spannungen eines Dreiecks mit geerdetem Mittelpunkt; dieser Außenleiter ist der hohe. Klären, welche Versorgung das ist.
