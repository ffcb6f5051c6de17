"""Drives a command in a real terminal. usage: terminal.py COLUMNS STEPS COMMAND...
STEPS is JSON: [[wait for this text, then send this], ...]. Prints what the terminal showed, and ends as the command does."""
import fcntl, json, os, pty, select, struct, sys, termios, time

columns, steps, command = int(sys.argv[1]), json.loads(sys.argv[2]), sys.argv[3:]
pid, terminal = pty.fork()
if pid == 0:
    os.execvp(command[0], command)
fcntl.ioctl(terminal, termios.TIOCSWINSZ, struct.pack("HHHH", 40, columns, 0, 0))

shown, seen, deadline = b"", 0, time.monotonic() + 100
while time.monotonic() < deadline:
    ready, _, _ = select.select([terminal], [], [], 0.2)
    if ready:
        try:
            part = os.read(terminal, 65536)
        except OSError:
            part = b""
        if not part:
            break
        shown += part
    if steps and steps[0][0].encode() in shown[seen:]:
        seen = len(shown)
        time.sleep(0.05)
        for key in steps.pop(0)[1]:
            os.write(terminal, key.encode())
            time.sleep(0.01)
sys.stdout.buffer.write(shown)
# It waits for something that nobody will send.
if steps or time.monotonic() >= deadline:
    os.kill(pid, 9)
_, status = os.waitpid(pid, 0)
if steps:
    sys.stderr.write("never saw: %s" % steps[0][0])
sys.exit(os.waitstatus_to_exitcode(status) if not steps else 99)
