# A draft that no licensed electrician has checked.
### Rule sets: what is said of each. How sure: A read in a copy or an excerpt, B from memory or common practice, C unsure. The figures are in
### `RuleSet::figures`. Names of laws and standards stay as they are in every language.

# $law is one of the -law messages, $standards one of the -standards messages.
# life-critical
rules-defer = Ley: { $law }. Normas y guías: { $standards }. Estas, y quien esté habilitado para aplicarlas, tienen prioridad. Nadie habilitado ha revisado las reglas de esta app.
# On the page of a job, where a line has to do.
rules-in-short = { $name }. Las reglas locales y una persona habilitada tienen prioridad.
# On the first screen, and wherever no country is picked.
# life-critical
rules-defer-none = Las reglas locales y una persona habilitada tienen prioridad. Nadie habilitado ha revisado las reglas de esta app.

rules-uk-name = Reino Unido
rules-uk-law = Electricity at Work Regulations 1989, regulations 4, 12, 13, 14 y 16 (en Irlanda del Norte, las de 1991)
rules-uk-standards = HSG85, GS38, BS EN 50110-1, BS 7671
rules-uk-measured = bornes de la alimentación; una lectura es un indicio, los límites valen para medias
rules-uk-colours = Fases marrón, negro, gris; N azul; PE verde-amarillo. Antes de 2006: rojo, amarillo, azul; N negro
rules-uk-instruments = Detector de tensión bipolar, cables como en GS38: protección para los dedos, como mucho 4 mm de punta desnuda, con fusible donde se use un multímetro
rules-uk-removal = Ninguna ley dice cómo: según el procedimiento de quien controla el peligro, mediante una persona autorizada y nombrada que haya comprobado persona, trabajo y punto
rules-uk-sure = A para las guías, B para los reglamentos
rules-uk-sources = Tolerancia: IEE Regulations, apéndice 2, de un extracto; ESQCR 2002 regulation 27, número de memoria. 110 V en obras: BS 7671 411.8, de un extracto. 50 V y 120 V: IEC 61140, de memoria. Colores: BS 7671, fechas de un extracto. Instrumento: GS38, de una cita. Orden: sin fuente

rules-ie-name = Irlanda
rules-ie-law = S.I. 299 of 2007, Part 3, regulations 85 (desconexión) y 86 (trabajo en equipos sin tensión y en tensión)
rules-ie-standards = Guía de la HSA sobre Part 3, EN 50110-1, I.S. 10101
rules-ie-measured = bornes de la alimentación; dentro de la instalación se suma la caída de tensión
rules-ie-colours = Fases marrón, negro, gris; N azul; PE verde-amarillo. Más antiguos: rojo, amarillo, azul; N negro
rules-ie-instruments = Detector de tensión bipolar (EN 61243-3)
rules-ie-removal = Ninguna ley dice cómo: según el procedimiento de quien controla el trabajo
rules-ie-sure = A para los reglamentos, B para lo demás
rules-ie-sources = Tolerancia: EN 50160 e IEC 60038, de extractos. 110 V en obras: BS 7671 411.8, de un extracto. 50 V y 120 V: IEC 61140, de memoria. Ley: S.I. 299 of 2007, leída. Colores, instrumento: de memoria. Orden: sin fuente

rules-eu-name = Unión Europea
rules-eu-law = Directivas 89/391/CEE y 2009/104/CE, y la ley nacional que las aplica
rules-eu-standards = EN 50110-1 con la parte nacional de EN 50110-2, HD 60364
rules-eu-measured = bornes de la alimentación; dentro de la instalación se suma la caída de tensión
rules-eu-colours = Fases marrón, negro, gris; N azul; PE verde-amarillo. Los colores antiguos cambian de un país a otro
rules-eu-instruments = Detector de tensión bipolar (EN 61243-3), probado justo antes de usarlo
rules-eu-removal = Según el procedimiento del explotador: se vuelve a dar tensión solo después de que la persona responsable del trabajo haya comunicado que está libre (EN 50110-1, 6.2.8)
rules-eu-sure = A para los títulos, B para lo demás
rules-eu-sources = Tolerancia: EN 50160 e IEC 60038, de extractos. 50 V y 120 V: IEC 61140, de memoria. Colores: IEC 60445, de un extracto. Instrumento: campo de aplicación de EN 61243-3, leído. Retirada: título de un apartado de EN 50110-1. Orden: sin fuente

rules-de-name = Alemania
rules-de-law = ArbSchG, BetrSichV, DGUV Vorschrift 3
rules-de-standards = DIN VDE 0105-100: cinco reglas en orden, que se deshacen en orden inverso
rules-de-measured = bornes de la alimentación (DIN EN 50160); dentro de la instalación se suma la caída de tensión
rules-de-colours = Fases marrón, negro, gris; N azul; PE verde-amarillo. Antes de 1965, aproximadamente: fases negro, N gris, PE rojo
rules-de-instruments = Detector de tensión bipolar (DIN EN 61243-3), probado justo antes de usarlo, en todos los polos; un buscapolos de una punta no lo es
rules-de-removal = Según el procedimiento del explotador, mediante la persona responsable de la instalación y la del trabajo
rules-de-sure = A para las cinco reglas, B para lo demás
rules-de-sources = Tolerancia: EN 50160 e IEC 60038, de extractos. 50 V y 120 V: IEC 61140, de memoria. Cinco reglas: página de una mutua de accidentes, leída. Colores: IEC 60445, los antiguos de memoria. Orden: sin fuente

rules-us-name = Estados Unidos
rules-us-law = 29 CFR 1910.331 a .335 para riesgos eléctricos, 1910.147 para lo demás, 1926.416 y .417 en obras; planes estatales
rules-us-standards = NFPA 70E, artículo 120; NEC
rules-us-measured = punto de suministro (gama A); en el equipo es menor
rules-us-colours = Conductor puesto a tierra blanco o gris, tierra de equipos verde, desnudo o verde-amarillo, fase alta naranja; las fases, solo por costumbre
rules-us-instruments = Instrumento portátil apto para la tensión y la categoría, cada conductor de fase o parte del circuito, fase a fase y fase a tierra, probado con una fuente conocida antes y después
rules-us-removal = 29 CFR 1910.333(b)(2)(v)(C) para trabajo eléctrico: una persona cualificada designada para ello, el titular fuera del lugar de trabajo e informado antes de reanudar allí; además 1910.147(e)(3). Cumplir todo de ambos
rules-us-sure = A para 1910.333, B para lo demás
rules-us-sources = Tolerancia: ANSI C84.1, gama A, de memoria. 50 V: 29 CFR 1910.333(a)(1) y NFPA 70E, de extractos. Retirada: texto de 1910.333(b)(2)(v)(C) en la copia de un estado, y de 1910.147(e)(3). Instrumento: NFPA 70E 120.6, de extractos. Colores: NEC, de memoria salvo 210.5(C). Orden: costumbre, sin fuente

rules-ca-name = Canadá
rules-ca-law = La ley de la provincia o territorio, por ejemplo O. Reg. 851 y 213/91, BC Reg. 296/97 parts 10 y 19, OHS Code de Alberta part 15
rules-ca-standards = CSA Z462, CSA Z460, CEC C22.1
rules-ca-measured = solo el punto de conexión; no se pudieron leer los valores de CSA C235:19, se usan los de ANSI C84.1
rules-ca-colours = Fases rojo, negro, azul; N blanco; tierra verde
rules-ca-instruments = Como NFPA 70E, en cuyo texto se basa CSA Z462
rules-ca-removal = Según la provincia: en Columbia Británica el supervisor tiene una segunda llave, hace todo lo razonable por contactar al trabajador y se lo dice en el turno siguiente
rules-ca-sure = A para el campo de aplicación y los títulos, C para los valores
rules-ca-sources = Tolerancia: la de ANSI C84.1; CSA C235:19 no se pudo leer, dudoso. 30 V y 60 V: CSA Z462, de memoria, dudoso. Retirada: títulos de reglas provinciales. Colores: CEC 4-032, de memoria, dudoso. Orden: costumbre, sin fuente

rules-au-name = Australia
rules-au-law = Model WHS Regulations, part 4.7 (154 a 166), y la ley de electricidad del estado
rules-au-standards = Código de práctica Managing electrical risks in the workplace, AS/NZS 4836, AS/NZS 3000
rules-au-measured = punto de suministro
rules-au-colours = Fases rojo o marrón, o bien rojo, blanco, azul oscuro; N negro o azul claro; E verde-amarillo. El negro es N o una fase en el mismo país
rules-au-instruments = Instrumento adecuado y probado antes y después, cada conductor expuesto a tierra y a los demás
rules-au-removal = Solo la persona nombrada; si no, con el formulario de la empresa para ello, mediante el supervisor, con cada tarjeta comunicada antes de dar tensión
rules-au-sure = A para las páginas de Queensland, C para los colores
rules-au-sources = Tolerancia: AS 60038, de memoria. 50 V y 120 V: IEC 61140, de memoria. Colores: AS/NZS 3000 tabla 3.4, de páginas que se contradicen. Instrumento: páginas de un regulador, leídas. Orden: costumbre, sin fuente

rules-nz-name = Nueva Zelanda
rules-nz-law = Electricity Act 1992, Electricity (Safety) Regulations 2010 con sus modificaciones, Health and Safety at Work Act 2015
rules-nz-standards = AS/NZS 4836, AS/NZS 3000 con las partes de Nueva Zelanda
rules-nz-measured = punto de suministro; ±10 % desde el 13 de noviembre de 2025
rules-nz-colours = Fases rojo, blanco, azul o marrón, negro, gris; N negro o azul claro; E verde-amarillo. El negro es N o una fase en el mismo país
rules-nz-instruments = Instrumento adecuado y probado antes y después, cada conductor expuesto a tierra y a los demás
rules-nz-removal = Solo la persona nombrada; si no, según el procedimiento de la empresa, mediante el supervisor
rules-nz-sure = A para la banda, C para los colores
rules-nz-sources = Tolerancia: anuncio de noviembre de 2025, el reglamento no se ha visto. 50 V y 120 V: IEC 61140, de memoria. Colores: AS/NZS 3000, de páginas que se contradicen. Orden: costumbre, sin fuente

rules-own-name = Reglas del propio sitio
rules-own-law = La ley y las reglas que valen en el sitio
rules-own-standards = Las del sitio
rules-own-measured = donde digan las reglas del sitio
rules-own-colours = Como los tenga el sitio
rules-own-instruments = Como digan las reglas del sitio
rules-own-removal = Como digan las reglas del sitio
rules-own-sure = No se afirma nada
rules-own-sources = Valores: IEC 60038 e IEC 61140, como para la Unión Europea. Todo lo demás: lo que digan las reglas del sitio
