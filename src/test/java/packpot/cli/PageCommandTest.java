package packpot.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** How the page is started wrongly; the page itself is tested in the package page. */
class PageCommandTest {

    @Test
    void aPortThatIsNoneIsTold(@TempDir Path folder) {
        Run run = Run.of("page", folder.toString(), "--no-browser", "--port", "70000");
        assertThat(run.exitCode()).isEqualTo(ExitCode.WRONG_USE);
        assertThat(run.err()).contains("--port: read 70000, expected a number from 0 to 65535");
    }

    @Test
    void aFolderThatIsNotThereIsTold(@TempDir Path folder) {
        Run run = Run.of("page", folder.resolve("none").toString(), "--no-browser");
        assertThat(run.exitCode()).isEqualTo(ExitCode.WRONG_USE);
        assertThat(run.err()).contains("there is no folder", "make it first");
    }

    @Test
    void aPortInUseIsTold(@TempDir Path folder) throws Exception {
        try (ServerSocket taken = new ServerSocket(0, 1, InetAddress.getByName("127.0.0.1"))) {
            String port = String.valueOf(taken.getLocalPort());
            Run run = Run.of("page", folder.toString(), "--no-browser", "--port", port);
            assertThat(run.exitCode()).isEqualTo(ExitCode.WRONG_USE);
            assertThat(run.err()).contains("port " + port + " is in use", "leave --port out");
        }
    }
}
