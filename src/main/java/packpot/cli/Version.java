package packpot.cli;

import java.io.IOException;
import java.io.InputStream;
import java.util.Properties;
import packpot.household.ScenarioReader;
import picocli.CommandLine.IVersionProvider;

/** The program's version, written by the build. */
final class Version implements IVersionProvider {
    @Override
    public String[] getVersion() throws IOException {
        Properties build = new Properties();
        try (InputStream in = Version.class.getResourceAsStream("/packpot/build.properties")) {
            if (in != null) {
                build.load(in);
            }
        }
        return new String[] {
            "packpot " + build.getProperty("version", "unknown"),
            "reads scenarios of format " + ScenarioReader.FORMAT,
            "Java " + System.getProperty("java.version")
        };
    }
}
