"""Reads a calendar with Debian's python3-icalendar and prints what it found as JSON: an independent reader for the tests."""
import json
import sys

import icalendar

calendar = icalendar.Calendar.from_ical(sys.stdin.buffer.read())
events = calendar.walk("VEVENT")
print(json.dumps({
    "errors": [str(error) for part in calendar.walk() for error in part.errors],
    "names": sorted({name for part in calendar.walk() for name in part.keys()}),
    "name": str(calendar["NAME"]),
    "events": [{
        "summary": str(event["SUMMARY"]),
        "description": str(event.get("DESCRIPTION", "")),
        "location": str(event.get("LOCATION", "")),
        "contact": str(event.get("CONTACT", "")),
        "uid": str(event["UID"]),
        "start": event["DTSTART"].dt.isoformat(),
        "end": event["DTEND"].dt.isoformat(),
        "alarms": [{
            "text": str(alarm["DESCRIPTION"]),
            "minutesBefore": 0 - alarm["TRIGGER"].dt.total_seconds() / 60,
        } for alarm in event.walk("VALARM")],
    } for event in events],
}))
