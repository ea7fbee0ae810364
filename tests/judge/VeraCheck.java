import java.io.File;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.logging.LogManager;
import org.verapdf.gf.foundry.VeraGreenfieldFoundryProvider;
import org.verapdf.pdfa.Foundries;
import org.verapdf.pdfa.PDFAParser;
import org.verapdf.pdfa.PDFAValidator;
import org.verapdf.pdfa.flavours.PDFAFlavour;
import org.verapdf.pdfa.results.TestAssertion;
import org.verapdf.pdfa.results.ValidationResult;

/**
 * Judges PDF files against PDF/A and PDF/UA profiles with the veraPDF engine.
 *
 * <p>Usage: {@code VeraCheck FLAVOUR[,FLAVOUR...] FILE...}, for instance {@code 3a,ua1}. Prints one
 * line per file and flavour ({@code PASS} or {@code FAIL}) and, under a failure, each broken clause
 * with its count, message and first place. Exit code 0: all comply; 1: some do not; 2: wrong usage.
 */
public final class VeraCheck {
  private VeraCheck() {}

  public static void main(String[] arguments) {
    if (arguments.length < 2) {
      System.err.println("usage: VeraCheck FLAVOUR[,FLAVOUR...] FILE...");
      System.exit(2);
    }
    List<PDFAFlavour> flavours = new ArrayList<>();
    for (String name : arguments[0].split(",")) {
      PDFAFlavour flavour = PDFAFlavour.fromString(name);
      if (flavour == PDFAFlavour.NO_FLAVOUR) {
        System.err.println("VeraCheck: unknown flavour '" + name + "'");
        System.exit(2);
      }
      flavours.add(flavour);
    }
    LogManager.getLogManager().reset();
    VeraGreenfieldFoundryProvider.initialise();

    boolean allComply = true;
    for (String file : Arrays.asList(arguments).subList(1, arguments.length)) {
      for (PDFAFlavour flavour : flavours) {
        allComply &= judge(file, flavour);
      }
    }
    System.exit(allComply ? 0 : 1);
  }

  private static boolean judge(String file, PDFAFlavour flavour) {
    try (PDFAParser parser = Foundries.defaultInstance().createParser(new File(file), flavour);
        PDFAValidator validator = Foundries.defaultInstance().createValidator(flavour, false)) {
      ValidationResult result = validator.validate(parser);
      System.out.printf(
          "%s %s %s (%d assertions, %d rules)%n",
          result.isCompliant() ? "PASS" : "FAIL",
          flavour.getId(),
          file,
          result.getTotalAssertions(),
          result.getValidationProfile().getRules().size());
      printFaults(result);
      return result.isCompliant();
    } catch (Exception fault) {
      System.out.printf("FAIL %s %s: %s%n", flavour.getId(), file, fault);
      return false;
    }
  }

  private static void printFaults(ValidationResult result) {
    Map<String, Integer> counts = new TreeMap<>();
    result
        .getFailedChecks()
        .forEach(
            (rule, count) ->
                counts.merge(rule.getClause() + "-" + rule.getTestNumber(), count, Integer::sum));
    Map<String, TestAssertion> first = new TreeMap<>();
    for (TestAssertion assertion : result.getTestAssertions()) {
      if (assertion.getStatus() == TestAssertion.Status.FAILED) {
        String rule =
            assertion.getRuleId().getClause() + "-" + assertion.getRuleId().getTestNumber();
        first.putIfAbsent(rule, assertion);
      }
    }
    for (Map.Entry<String, TestAssertion> fault : first.entrySet()) {
      TestAssertion assertion = fault.getValue();
      System.out.printf(
          "  %s, %d times: %s%n    %s%n    at %s%n",
          fault.getKey(),
          counts.getOrDefault(fault.getKey(), 1),
          assertion.getMessage(),
          assertion.getErrorMessage(),
          assertion.getLocation().getContext());
    }
  }
}
