#!/usr/bin/env python3
"""How soon the screens answer, seen from the terminal's side. Run by hand, on a machine that does nothing else:

    python3 tests/latency.py EXECUTABLE [DESIGN] [COLUMNSxROWS]

EXECUTABLE is `frontend-screens` as published. It is run on a pseudo-terminal of its own; a small reader of its output keeps the
picture. Printed are the least, the middle and the greatest of each delay, and what the program costs while nobody touches it.
Goals: echo 30 ms; figures after a step at three a second 60 ms, none above 120 ms; at rest no time of the processor and no output.
Unix only; nothing but Python's own library."""
import fcntl, os, pty, re, select, signal, statistics, struct, sys, tempfile, termios, time


class Picture:
    """What stands on the terminal. Knows what the screens send: places, colours, clearing."""

    SEQUENCE = re.compile(r"\x1b(?:\[([0-9;?<>=]*)[ !]?([@-~])|\][^\x07\x1b]*(?:\x07|\x1b\\)|[()][0-9A-Z]|[=>78A-Z])")

    def __init__(self, columns, rows):
        self.columns, self.rows = columns, rows
        self.cells = [[" "] * columns for _ in range(rows)]
        self.x = self.y = 0
        self.rest = ""

    def feed(self, text):
        text, at = self.rest + text, 0
        self.rest = ""
        while at < len(text):
            if text[at] == "\x1b":
                found = self.SEQUENCE.match(text, at)
                if not found:
                    self.rest = text[at:]
                    return
                self.act(found.group(1) or "", found.group(2))
                at = found.end()
                continue
            letter = text[at]
            at += 1
            if letter == "\r":
                self.x = 0
            elif letter == "\n":
                self.y = min(self.rows - 1, self.y + 1)
            elif letter >= " ":
                if self.x < self.columns and self.y < self.rows:
                    self.cells[self.y][self.x] = letter
                self.x += 1

    def act(self, numbers, final):
        given = [int(n) if n.isdigit() else 0 for n in numbers.split(";")]
        if final == "H":
            self.y, self.x = max(0, given[0] - 1), max(0, (given[1] if len(given) > 1 else 1) - 1)
        elif final == "J":
            self.cells = [[" "] * self.columns for _ in range(self.rows)]
        elif final == "G":
            self.x = max(0, given[0] - 1)
        elif final == "C":
            self.x += max(1, given[0])

    def row(self, y):
        return "".join(self.cells[y])

    def __str__(self):
        return "\n".join(self.row(y).rstrip() for y in range(self.rows))


class Screens:
    """The program on a terminal of its own."""

    def __init__(self, command, columns, rows, state):
        self.started = time.perf_counter()
        self.process, self.terminal = pty.fork()
        if self.process == 0:
            os.environ.update(TERM="xterm-256color", LC_ALL="C.UTF-8", XDG_STATE_HOME=state, HOME=state)
            os.execv(command[0], command)
        fcntl.ioctl(self.terminal, termios.TIOCSWINSZ, struct.pack("HHHH", rows, columns, 0, 0))
        os.kill(self.process, signal.SIGWINCH)
        self.picture = Picture(columns, rows)
        self.sent = 0

    def read(self, seconds):
        """Takes what comes within the time; False where nothing did."""
        if not select.select([self.terminal], [], [], max(0, seconds))[0]:
            return False
        came = os.read(self.terminal, 1 << 16)
        self.sent += len(came)
        self.picture.feed(came.decode("utf-8", "replace"))
        return True

    def until(self, holds, seconds=10):
        """Milliseconds until the picture is as wanted."""
        begun = time.perf_counter()
        while not holds(self.picture):
            left = seconds - (time.perf_counter() - begun)
            if left <= 0:
                sys.exit(f"waited {seconds} s in vain; the screen:\n{self.picture}")
            self.read(left)
        return 1000 * (time.perf_counter() - begun)

    def quiet(self, seconds=0.4):
        while self.read(seconds):
            pass

    def field(self):
        """The row of the field in hand, without the figures beside it."""
        rows = [self.picture.row(y) for y in range(self.picture.rows)]
        return next((row.split("│")[0] for row in rows if row.startswith(">")), "")

    def press(self, keys):
        os.write(self.terminal, keys.encode())

    def spent(self):
        """Seconds of the processor so far, all threads."""
        fields = open(f"/proc/{self.process}/stat").read().rsplit(")", 1)[1].split()
        return (int(fields[11]) + int(fields[12])) / os.sysconf("SC_CLK_TCK")


def say(what, delays, goal):
    print(f"{what:<44} {min(delays):6.1f} {statistics.median(delays):6.1f} {max(delays):6.1f} ms   goal {goal}")


def main():
    if len(sys.argv) < 2:
        sys.exit(__doc__)
    columns, rows = map(int, (sys.argv[3] if len(sys.argv) > 3 else "80x24").split("x"))
    command = [os.path.abspath(sys.argv[1])] + ([os.path.abspath(sys.argv[2])] if len(sys.argv) > 2 else [])
    fresh = lambda picture: re.search(r"\d+ (pass|fail|marginal)", picture.row(0)) and "..." not in picture.row(0)
    with tempfile.TemporaryDirectory() as state:
        first, figures = [], []
        for _ in range(5):
            screens = Screens(command, columns, rows, state)
            first.append(screens.until(lambda picture: "electrodes" in str(picture)))
            figures.append(first[-1] + screens.until(fresh))
            screens.quiet()
            screens.press("q")
            try:
                while screens.read(2):
                    pass
            except OSError:
                pass
            os.waitpid(screens.process, 0)
        say("start: first picture", first, "as in the fast order, about 100")
        say("start: figures", figures, "")

        screens = Screens(command, columns, rows, state)
        screens.until(fresh)
        screens.quiet(1.0)

        echo = []
        screens.press("\r")
        screens.quiet()
        for digit in "12345678" * 3:
            before = screens.field()
            screens.press(digit)
            echo.append(screens.until(lambda picture: screens.field() != before))
            screens.quiet(0.12)
        screens.press("\x1b")
        screens.quiet(0.6)
        say("echo of a key in a field", echo, "30")

        field, steps = [], []
        for key in "+" * 12 + "-" * 12:
            begun = time.perf_counter()
            before = screens.field()
            screens.press(key)
            field.append(screens.until(lambda picture: screens.field() != before))
            screens.until(fresh)
            steps.append(1000 * (time.perf_counter() - begun))
            while (left := begun + 1 / 3 - time.perf_counter()) > 0:
                screens.read(left)
        say("step at three a second: the field", field, "30")
        say("step at three a second: the figures", steps, "60, worst 120")

        # The search for advice after the last step is work, not rest.
        screens.read(5)
        time.sleep(5)
        while screens.read(0.1):
            pass
        seconds, spent, sent = 10, screens.spent(), screens.sent
        end = time.perf_counter() + seconds
        while (left := end - time.perf_counter()) > 0:
            screens.read(left)
        print(f"{'at rest for 10 s':<44} {100 * (screens.spent() - spent) / seconds:.1f} % of a core, {screens.sent - sent} bytes   goal 0, 0")
        os.kill(screens.process, signal.SIGTERM)


main()
