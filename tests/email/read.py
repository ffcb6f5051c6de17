"""Reads every message of a folder by Python's strict e-mail policy and prints what it found, one JSON line a message."""
import email, email.policy, json, pathlib, sys

policy = email.policy.SMTP.clone(raise_on_defect=True)
for path in sorted(pathlib.Path(sys.argv[1]).iterdir()):
    message = email.message_from_bytes(path.read_bytes(), policy=policy)
    mailboxes = lambda name: [[a.display_name, a.addr_spec] for a in message[name].addresses] if message[name] else []
    print(json.dumps({
        "headers": [name.lower() for name in message.keys()],
        "from": mailboxes("from"),
        "to": mailboxes("to"),
        "subject": str(message["subject"]),
        "date": message["date"].datetime.isoformat(),
        "id": str(message["message-id"]).strip(),
        "defects": [str(d) for part in message.walk() for d in part.defects],
        "parts": [[part.get_content_type(), part.get_filename(), part.get("content-language")] for part in message.walk()],
        "text": message.get_body(("plain",)).get_content(),
        "html": message.get_body(("html",)).get_content(),
    }))
