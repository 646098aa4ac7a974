#!/usr/bin/env python3
"""Asks Find of a running site, some 700 times, about a client whom the asker may not see, knowing their code alone.

    python3 tests/drills/probe-find.py --site http://127.0.0.1:5080 --name desk.pier@demo.test --code C-0041 [--truth "elias ambleford"]

Signed in as the desk of one salon it asks for the code of another salon's client together with the beginnings of words: every letter and
digit, every pair of letters, and, with --truth, each beginning of the words that are true, which nobody could know who learned nothing. Every
answer must be the same but for what was typed: status, length and text. The last line is the verdict; the program ends with 0 where nothing
was learned, 1 where answers differ, 2 where it could not ask. With --truth it then asks true and wrong beginnings by turns and says how long each
kind took: that is for reading, not for judging, as a machine's own noise is as large.
Only to loopback, one request after another. It needs nothing but Python.
"""
import argparse
import html
import http.cookiejar
import re
import statistics
import string
import sys
import time
import urllib.error
import urllib.parse
import urllib.request

PASSWORD = "quiet-harbour-demo"  # what the demo shows to everybody
MOST = 800
TIMED = 100

# What differs between any two answers: sealed marks of forms, and what the framework leaves in comments.
EACH_TIME_ANEW = re.compile(r'CfDJ8[\w-]+|<!--.*?-->|nonce="[^"]*"', re.S)


class Browser:
    def __init__(self, site):
        self.site = site
        policy = http.cookiejar.DefaultCookiePolicy(secure_protocols=("http", "https"))
        self.opener = urllib.request.build_opener(urllib.request.HTTPCookieProcessor(http.cookiejar.CookieJar(policy)))

    def ask(self, path, fields=None):
        body = urllib.parse.urlencode(fields).encode() if fields else None
        request = urllib.request.Request(self.site + path, body, {"Origin": self.site} if fields else {})
        while True:
            try:
                with self.opener.open(request, timeout=60) as answer:
                    return answer.status, answer.geturl(), answer.read().decode()
            except urllib.error.HTTPError as e:
                if e.code != 429:
                    return e.code, e.geturl(), e.read().decode()
                time.sleep(1 + int(e.headers.get("Retry-After", "5")))

    def sign_in(self, name, password):
        _, _, page = self.ask("/sign-in")
        form = re.search(r"<form[^>]*>(?:(?!</form>).)*Input\.Password.*?</form>", page, re.S)
        if not form:
            return False
        fields = {}
        for field in re.findall(r"<input[^>]*>", form.group(0)):
            key, value = re.search(r'name="([^"]*)"', field), re.search(r'value="([^"]*)"', field)
            if key:
                fields[key.group(1)] = html.unescape(value.group(1)) if value else ""
        fields |= {"Input.Name": name, "Input.Password": password}
        self.ask("/sign-in", fields)
        status, where, _ = self.ask("/find")
        return status == 200 and urllib.parse.urlsplit(where).path == "/find"


def bare(text, typed):
    """The answer without what was typed, however it is spelt there."""
    # Twice escaped it stands in the link that leads back after a sign-in.
    escaped = urllib.parse.quote(typed, safe="")
    for spelling in [urllib.parse.quote(escaped, safe=""), html.escape(typed), escaped, urllib.parse.quote_plus(typed)]:
        text = re.sub(re.escape(spelling), "?", text, flags=re.I)
    return EACH_TIME_ANEW.sub("", text)


def main():
    arguments = argparse.ArgumentParser(description=__doc__.split("\n")[0])
    arguments.add_argument("--site", default="http://127.0.0.1:5080")
    arguments.add_argument("--name", required=True, help="who asks")
    arguments.add_argument("--password", default=PASSWORD)
    arguments.add_argument("--code", required=True, help="of a client whom they may not see")
    arguments.add_argument("--truth", default="", help="words that are true of that client")
    given = arguments.parse_args()
    if urllib.parse.urlsplit(given.site).hostname not in ("127.0.0.1", "localhost", "::1"):
        print("NOT ASKED: only a site on this machine is probed.")
        return 2
    browser = Browser(given.site.rstrip("/"))
    if not browser.sign_in(given.name, given.password):
        print(f"NOT ASKED: {given.name} could not sign in.")
        return 2

    signs = string.ascii_lowercase + string.digits
    true = [word[: n + 1] for word in given.truth.lower().split() for n in range(len(word))]
    wrong = [p for p in list(signs) + [a + b for a in string.ascii_lowercase for b in string.ascii_lowercase] if p not in true]
    asked = [given.code] + [f"{given.code} {p}" for p in true + wrong][: MOST - 1]

    answers = {}
    for typed in asked:
        status, where, text = browser.ask("/find?q=" + urllib.parse.quote(typed))
        text = bare(text, typed)
        answers.setdefault((status, urllib.parse.urlsplit(where).path, len(text), text), []).append(typed)

    times = {"true": [], "wrong": []}
    for n in range(TIMED if true else 0):
        length = len(true[n % len(true)])
        for kind, prefix in (("true", true[n % len(true)]), ("wrong", "zqxjkvwzqxjkvw"[:length])):
            begun = time.perf_counter()
            browser.ask("/find?q=" + urllib.parse.quote(f"{given.code} {prefix}"))
            times[kind].append(time.perf_counter() - begun)
    for kind, took in times.items():
        if took:
            low, middle, high = (1000 * q for q in statistics.quantiles(took, n=4))
            print(f"{kind} beginnings by turns: {len(took)}, median {middle:.1f} ms, half of them {low:.1f} to {high:.1f} ms")
    if len(answers) == 1:
        print(f"NOTHING LEARNED: {len(asked)} requests, one answer.")
        return 0
    usual = max(answers.values(), key=len)
    for (status, path, length, _), typed in answers.items():
        if typed is not usual:
            print(f"  {status} {path} {length} characters: {', '.join(typed[:20])}")
    print(f"SOMETHING LEARNED: {len(asked)} requests, {len(answers)} different answers.")
    return 1


if __name__ == "__main__":
    sys.exit(main())
