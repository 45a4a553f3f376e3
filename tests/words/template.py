#!/usr/bin/env python3
# SPDX-License-Identifier: MIT
"""Writes the template of the catalogue, as gettext's xgettext finds the texts in the sources.

    template.py SOURCE_DIR OUTPUT.pot

All layers are searched whose words reach a sheet. Texts without a word ("{}: {}") are left out: they are layout.
"""
import pathlib
import re
import subprocess
import sys
import xml.etree.ElementTree

LAYERS = ["catalogue", "quantity", "model", "fit", "circuit", "judge", "plan", "sheet", "draw"]
REPORT = ["sheet_*.cpp", "reading_notes.cpp"]
# What no sheet shows: other commands' words.
LEFT_OUT = {"plan/causes.cpp", "plan/find_words.cpp", "plan/symptom.cpp", "plan/observer.cpp", "plan/fault_words.cpp",
            "plan/tell_apart.cpp", "plan/trial.cpp", "plan/loom_difference.cpp", "plan/machine_fault.cpp",
            "plan/record.cpp", "plan/adapter_words.cpp", "plan/adapter_lead.cpp", "plan/adapter_wire.cpp",
            "plan/adapter_sides.cpp", "plan/find.cpp", "draw/flags.cpp", "draw/svg_writer.cpp",
            "draw/canvas.cpp", "draw/canvas_loader.cpp", "model/harness_text.cpp", "catalogue/family_search.cpp", "fit/cable.cpp"}
KEYWORDS = ["format:1", "tr:1", "tr_in:1c,2", "later:1", "counted:2,3", "count_of:2,3"]


def sources(src):
    found = []
    for layer in LAYERS:
        found += sorted((src / layer).glob("*.cpp")) + sorted((src / layer).glob("*.h"))
    for pattern in REPORT:
        found += sorted((src / "report").glob(pattern))
    return [path.relative_to(src) for path in found if path.relative_to(src).as_posix() not in LEFT_OUT]


def extract(root):
    """The template as text, with the places of each text relative to SOURCE_DIR."""
    command = ["xgettext", "--language=C++", "--from-code=UTF-8", "--add-comments=Translators:", "--no-wrap",
               "--sort-by-file", "--keyword", "--output=-", "--package-name=plugward"]
    command += [f"--keyword={keyword}" for keyword in KEYWORDS]
    command += [f"--flag={name.split(':')[0]}:{place}:no-c-format"
                for name in KEYWORDS for place in re.findall(r"\d", name)]
    files = ["src/" + path.as_posix() for path in sources(root / "src")]
    return subprocess.run(command + files, cwd=root, capture_output=True, check=True, text=True).stdout


def family_texts(root):
    """What the built-in connector families say in words."""
    texts = []
    for family in xml.etree.ElementTree.parse(root / "src/catalogue/families.xml").getroot():
        texts.append(family.get("title"))
        texts += [child.get("text") for child in family if child.tag in ("first-cavity", "release", "reuse")]
    return [text for text in dict.fromkeys(texts) if text]


def quoted(text):
    return '"' + text.replace("\\", "\\\\").replace('"', '\\"') + '"'


def has_words(text):
    return re.search(r"[A-Za-z]", re.sub(r"\{[^}]*\}", "", text)) is not None


def entries(text):
    """(context, msgid, msgid_plural, [msgstr]) of every entry but the header, and the entry's own lines."""
    found = []
    for block in re.split(r"\n\n+", text.strip()):
        fields, current = {}, None
        for line in block.split("\n"):
            match = re.match(r"(msgctxt|msgid_plural|msgid|msgstr(?:\[\d\])?) (\".*\")$", line)
            if match:
                current = match.group(1)
                fields[current] = unquoted(match.group(2))
            elif line.startswith('"') and current:
                fields[current] += unquoted(line)
        if fields.get("msgid"):
            said = [fields[name] for name in sorted(fields) if name.startswith("msgstr")]
            found.append(((fields.get("msgctxt", ""), fields["msgid"], fields.get("msgid_plural", ""), said), block))
    return found


def unquoted(text):
    return re.sub(r"\\(.)", lambda m: {"n": "\n", "t": "\t"}.get(m.group(1), m.group(1)), text[1:-1])


def template(root):
    text = extract(root)
    header = text.strip().split("\n\n", 1)[0].replace("charset=CHARSET", "charset=UTF-8")
    kept = [block for (_, msgid, _, _), block in entries(text) if has_words(msgid)]
    known = {msgid for (context, msgid, _, _), _ in entries(text) if not context}
    kept += [f'#: src/catalogue/families.xml\nmsgid {quoted(said)}\nmsgstr ""'
             for said in family_texts(root) if said not in known]
    return header + "\n\n" + "\n\n".join(kept) + "\n"


if __name__ == "__main__":
    pathlib.Path(sys.argv[2]).write_text(template(pathlib.Path(sys.argv[1])), encoding="utf-8")
