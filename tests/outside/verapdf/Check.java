import java.io.FileInputStream;
import org.verapdf.gf.foundry.VeraGreenfieldFoundryProvider;
import org.verapdf.pdfa.Foundries;
import org.verapdf.pdfa.PDFAParser;
import org.verapdf.pdfa.PDFAValidator;
import org.verapdf.pdfa.flavours.PDFAFlavour;
import org.verapdf.pdfa.results.TestAssertion;
import org.verapdf.pdfa.results.ValidationResult;

/** Prints for each file what it claims to be, whether it is, and what is not as it must be. Exit code 1 if any is not. */
class Check {
    public static void main(String[] files) throws Exception {
        VeraGreenfieldFoundryProvider.initialise();
        boolean all = true;
        for (String file : files) {
            try (PDFAParser parser = Foundries.defaultInstance().createParser(new FileInputStream(file), PDFAFlavour.NO_FLAVOUR)) {
                PDFAFlavour claimed = parser.getFlavour();
                PDFAValidator validator = Foundries.defaultInstance().createValidator(PDFAFlavour.PDFA_3_A, false);
                ValidationResult result = validator.validate(parser);
                System.out.println(claimed.getId() + " " + result.isCompliant() + " " + result.getTotalAssertions() + " " + file);
                for (TestAssertion assertion : result.getTestAssertions()) {
                    System.out.println("  " + assertion.getRuleId().getClause() + " " + assertion.getMessage() + " " + assertion.getLocation().getContext());
                }
                all &= result.isCompliant() && claimed == PDFAFlavour.PDFA_3_A;
            }
        }
        System.exit(all ? 0 : 1);
    }
}
