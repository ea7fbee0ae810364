"""The hard cases: what is missing, what is many, what is long, and combinations of these.

Each function returns a Reel; its docstring says what a person should look for on the pages.
"""

from reel import Reel, tag
from words import long_word, paragraphs, prose

ASSEMBLIES = ["handle side", "tail side", "frame", "spool", "gears", "drag", "handle", "level wind"]
CASES = {}


def case(function):
    CASES[function.__name__.replace("_", "-")] = function
    return function


def whole(name="The Landing Reel"):
    """An ordinary reel with a little of everything but photographs."""
    reel = Reel(name)
    parts = reel.ordinary_parts()
    reel.part("Click spring", "click-spring", state="missing")
    reel.part("Handle nut", "handle-nut", state="another")
    donor = reel.donor()
    reel.replaced("Dog", "dog", why="Its nose was worn round; the reel ran back.", donor=donor)
    reel.replaced("Yoke springs", "yoke-spring", why="One was broken.", adapted="Shortened by a turn.")
    reel.mark(parts[1], "HARROWAY REEL WORKS\nPORT ELLERY", "outside, round the edge")
    reel.mark(parts[2], "TARN", "outside, in the middle")
    reel.mark(parts[0], "T 6 118")
    reel.held("nell", "1988", how="found in a drawer")
    reel.tell(*paragraphs(3, 60, name), notes=["Told in March 2026."])
    reel.event("The knob from the boathouse door", prose(40, name + "event"))
    reel.arrived = "Whole, stiff, and dry where it should be wet."
    reel.note = prose(40, name + "note")
    reel.wishes = ["That it should fish again, and not look new."]
    reel.must_stay = ["The dent in the ring."]
    reel.fault("crack at screw four", parts[2])
    reel.try_out("Drag at the line")
    reel.step("The handle nut was drawn and the star unscrewed.")
    reel.step("The bridge was lifted straight up.", "Springs", "Cover it with a cloth; wear glasses.")
    reel.cleaned("The brass was wiped and dried.", pieces=parts[:2])
    reel.worked("The dog was timed to the ratchet.")
    reel.not_put_right = ["The ring stays dented: it is the reel’s own history."]
    reel.cared("Slacken the star after every day.", caution="Under load they leap.")
    reel.summary = "Made to fish."
    return reel


def with_photographs(reel, pairs=1, others=0):
    for number in range(pairs):
        reel.pair(f"Side {number + 1}.")
    stages = ["as-found", "strip-down", "work", "as-left", "history"]
    for number in range(others):
        reel.photo(stages[number % len(stages)], caption=f"View {number + 1}.")
    return reel


# ---- missing -----------------------------------------------------------------------------------


@case
def no_photographs():
    """The marks stand on the cover; no empty frames; entries keep their text, name in the margin."""
    return whole()


@case
def no_photographs_no_marks():
    """The cover says that there is neither; the dating chapter stays and says so."""
    reel = whole()
    reel.markings, reel.made = [], ""
    return reel


@case
def no_marks():
    """The dating chapter stays and says so, without an empty table."""
    reel = with_photographs(whole())
    reel.markings, reel.made = [], ""
    return reel


@case
def no_fittings():
    """Nothing was fitted by the bench: the second ledger tells the work alone."""
    reel = with_photographs(Reel())
    reel.ordinary_parts()
    reel.mark("pc-1", "T 6 118")
    reel.tell(prose(50, "no fittings"))
    return reel


@case
def bare():
    """Only what the schema demands, and twelve parts: every chapter says that it has nothing."""
    reel = Reel("Tarn")
    reel.ordinary_parts()
    reel.made = ""
    reel.handed_back = False
    return reel


@case
def no_parts():
    """Not one place is described."""
    reel = with_photographs(Reel(), others=6)
    reel.tell(prose(50, "no parts"))
    return reel


@case
def withheld_everything():
    """No name, no mark and no photograph may be told."""
    reel = whole()
    reel.people = [
        tag("person", tag("name", tag("withheld", "0" * 63 + str(n))), tag("stand-in", stand_in),
            tag("named-to", "owner"), id=key)
        for n, (key, stand_in) in enumerate([("ines", "the restorer"), ("nell", "the owner")])
    ]  # fmt: skip
    reel.markings = []
    for number in range(5):
        reel.mark(f"pc-{number + 1}", f"mark {number}", withheld=True)
    reel.photo("as-found", withheld=True)
    reel.photo("as-left", pair_of="ph-1", withheld=True)
    return reel


# ---- many --------------------------------------------------------------------------------------


@case
def sixty_photographs():
    """Eight pairs at most, the others three across; odd shapes whole and not blown up."""
    reel = with_photographs(whole(), pairs=10, others=34)
    reel.photo("as-found", 3000, 400, "Very wide.")
    reel.photo("as-found", 400, 2400, "Very tall.")
    reel.photo("work", 40, 30, "Very small.")
    reel.photo("work", 1200, 1200, "Square. " + prose(40, "square"))
    reel.pair("Tall.", width=600, height=1000)
    return reel


@case
def four_hundred_parts():
    """By assembly; the keepsake tells what is not original, then how many more there are."""
    reel = with_photographs(whole())
    states = ["original"] * 9 + ["same-maker", "life", "another", "not-determined", "missing"]
    for number in range(385):
        reel.part(f"Part {number + 1}", assembly=ASSEMBLIES[number * 8 // 385],
                  state=states[number % len(states)],
                  left="untouched" if number % 3 else "cleaned")  # fmt: skip
    return reel


@case
def four_hundred_original():
    """All original, all unchanged: one sentence and no empty table."""
    reel = with_photographs(Reel())
    for number in range(400):
        reel.part(f"Part {number + 1}", assembly=ASSEMBLIES[number // 50], left="untouched")
    return reel


@case
def forty_marks():
    """Marks of one, two and five lines, each whole in the table; a chart of forty bars."""
    reel = whole()
    reel.markings = []
    for number in range(40):
        lines = ["HARROWAY", "REEL WORKS", "PORT ELLERY", f"No. {number}", "PATENT"]
        reel.mark(f"pc-{number % 12 + 1}", "\n".join(lines[: (1, 2, 5)[number % 3]]),
                  because=prose(5 + number % 30, f"mark {number}"))  # fmt: skip
    return reel


@case
def sixty_replaced():
    """Sixty lettered entries, after Z in two letters; some are longer than a third of a page."""
    reel = with_photographs(whole())
    donor = reel.donor("a broken Tarn No. 5, " + prose(20, "donor"))
    for number in range(60):
        reel.replaced(f"Screw {number + 1}", "plate-screw", "frame", donor=donor if number % 2 else "",
                      why=prose(10 + (number % 7) ** 3, f"why {number}"),
                      adapted=prose(8, f"adapted {number}") if number % 3 else "",
                      photo=reel.photo("fitting") if number % 4 == 0 else "")  # fmt: skip
    return reel


@case
def many_cautions():
    """Each warning level with its work, over it when it is longer; none longer than a page is lost."""
    reel = with_photographs(whole())
    for number in range(25):
        reel.step(prose(6 + number % 40, f"step {number}"), "Springs",
                  prose(10 + 4 * number, f"caution {number}"))  # fmt: skip
    reel.step("One more screw.", "A very long caution", prose(900, "long caution"))
    for number in range(12):
        reel.cleaned(prose(10, f"cleaned {number}"), "Fumes", prose(30, f"fumes {number}"))
    return reel


@case
def eighty_holders():
    """The custody table runs over pages with its head repeated."""
    reel = with_photographs(whole())
    reel.custody = []
    for number in range(80):
        reel.person(f"holder-{number}", f"Quenby Marlow {number}", f"whoever had it after {number}")
        reel.held(f"holder-{number}", str(1900 + number), str(1901 + number), prose(6, f"how {number}"))
    return reel


@case
def forty_events_and_faults():
    """Subheads keep what follows with them; the lists run on."""
    reel = with_photographs(whole())
    for number in range(40):
        reel.event(f"Event {number}: " + prose(4, f"title {number}"), *paragraphs(2, 30, number),
                   keep_because=prose(20, f"keep {number}") if number % 2 else "")  # fmt: skip
        reel.fault(f"fault {number}", "pc-1", prose(12, f"fault {number}"), prose(12, f"stays {number}"))
        reel.try_out(f"Test {number}: " + prose(number % 12, f"test {number}"), prose(1 + number % 9, number),
                     prose(1 + number % 7, -number))  # fmt: skip
    return reel


# ---- long --------------------------------------------------------------------------------------

LONG_NAME = ("The Reel That Lay for Eleven Years Behind the Organ of the Chapel at Carrick Sound and Was "
             "Thought to Be a Door Handle")  # fmt: skip
VERY_LONG_NAME = LONG_NAME + " Until the Sexton’s Youngest Daughter Took It Down to the Ferry " * 3


def named(name, words):
    """A reel on which everything that has a name has this one."""
    reel = Reel(name)
    reel.model, reel.bench, reel.bench_place, reel.maker = name, words, words, (words, words)
    reel.people = []
    reel.person("ines", words, "the restorer", words, named_to="anyone", who=words)
    reel.person("nell", words, "the owner", words, who=words)
    for number in range(12):
        reel.part(words, assembly=words, state=["original", "another", "life"][number % 3])
    reel.pair(words)
    reel.photo("as-found", caption=words)
    reel.photo("strip-down", caption=words)
    reel.replaced(words, why=words, adapted=words, donor=reel.donor(words), way_back=words)
    reel.mark("pc-1", words, words, words)
    reel.mark("pc-2", words + "\n" + words, words, words)
    reel.held("nell", "1988", how=words, source=words)
    reel.tell(words, words + " " + words, notes=[words, words])
    reel.story_title, reel.story_answer, reel.arrived, reel.note = words, words, words, words
    reel.event(words, words, keep_because=words)
    reel.fault(words, "pc-1", words, words)
    reel.try_out(words, words, words)
    reel.step(words, words, words)
    reel.cleaned(words, words, words)
    reel.worked(words)
    reel.wishes, reel.must_stay, reel.not_put_right = [words], [words], [words]
    reel.box_and_papers = reel.summary = words
    reel.cared(words, label=words, caution=words)
    return reel


@case
def long_names():
    """Three lines on the cover and in every table; nothing cut, nothing on top of anything."""
    return named(LONG_NAME, "the second of the two left-hand threaded retaining collars, with its cork")


@case
def very_long_names():
    """A name that no size can set in three lines goes on at the last size."""
    return named(VERY_LONG_NAME, LONG_NAME)


@case
def very_long_name_without_picture():
    """The marks on the cover leave room for the name."""
    reel = whole(VERY_LONG_NAME)
    for number in range(12):
        reel.mark("pc-3", f"{LONG_NAME} {number}")
    return reel


@case
def long_words():
    """A word of 120 letters in every field breaks anywhere, without a hyphen."""
    return named(long_word(120), long_word(120))


@case
def short_words():
    """One letter in every field."""
    return named("T", "i")


@case
def many_scripts():
    """Greek, Cyrillic, Vietnamese, marks that combine, signs, Japanese: as the faces have them."""
    return named(
        "Ὁ μύλος · Лодка · 小さな渡し船の滑車 · Đèn biển",
        "Ǻńḍ a̱̋ ẹ̃ ŏ̤ · Ἀρχιμήδης ᾧ · Ђорђе Ѳита · Nguyễn Thị Hường · 昭和二十三年、渡し場にて。 · ½ ⅔ № ☙ → ♦ · ﬁ ſt",
    )


@case
def unbroken_japanese():
    """A text without spaces breaks between its characters."""
    return named("渡し場の釣り車", "渡し場の釣り車は長いあいだ箱の中に眠っていた。" * 6)


@case
def long_story():
    """6,000 words; notes stay level with their paragraphs, and one that collides moves down."""
    reel = with_photographs(whole(), pairs=2, others=3)
    reel.story = []
    notes = [prose(15 + (n * 37) % 120, f"note {n}") if n % 3 else "" for n in range(60)]
    notes[30] = prose(500, "long note")
    reel.tell(*paragraphs(60, 100, "long story"), notes=notes)
    reel.story_answer = prose(30, "answer")
    return reel


@case
def one_long_paragraph():
    """3,000 words without a new line, and a word of 20,000 letters."""
    reel = with_photographs(whole())
    reel.story = []
    reel.tell(prose(3000, "one paragraph"), notes=[prose(700, "one note")])
    reel.note = "It said " + long_word(20000) + " and nothing more."
    return reel


# ---- the small job -----------------------------------------------------------------------------


def small(name="Tarn", parts=6):
    reel = Reel(name)
    for number in range(parts):
        reel.part(f"Part {number + 1}")
    reel.arrived = "Whole and stiff."
    reel.cleaned("Wiped and dried.", "Bath", "Gloves. Local rules come first.")
    reel.worked("A drop of oil to each bearing.")
    reel.cared("Wipe it after every day.")
    reel.summary = "Cleaned and greased."
    return reel


@case
def small_job():
    """Two pages on both papers."""
    reel = with_photographs(small())
    reel.tell(prose(60, "small"))
    reel.mark("pc-1", "HARROWAY\nPORT ELLERY")
    return reel


@case
def small_job_full():
    """The most a small job may hold: two pages, three at the most."""
    reel = with_photographs(small(parts=8), others=2)
    reel.tell(*paragraphs(2, 70, "small, full"), notes=["Told in March 2026."])
    for number in range(4):
        reel.mark("pc-1", f"MARK {number}\nPORT ELLERY")
        reel.try_out(f"Test {number}")
    return reel


@case
def small_job_without_picture():
    """A cover with the marks, and the job behind it."""
    reel = small()
    reel.tell(prose(60, "small"))
    reel.mark("pc-1", "HARROWAY\nPORT ELLERY")
    return reel


@case
def small_job_bare():
    """No story, no picture, no mark, no care."""
    reel = Reel("T")
    reel.part("Spool")
    return reel


@case
def small_job_long_name():
    """The compact cover gives the name its room."""
    reel = with_photographs(small(LONG_NAME))
    reel.tell(prose(60, "small"))
    return reel


@case
def small_job_long_story():
    """A small job may have a long story."""
    reel = with_photographs(small())
    reel.tell(*paragraphs(12, 120, "small, long"), notes=paragraphs(12, 50, "small notes"))
    return reel


# ---- all at once -------------------------------------------------------------------------------


@case
def everything():
    """Four hundred parts, sixty photographs, a long story, long names, forty marks."""
    reel = with_photographs(whole(LONG_NAME), pairs=9, others=42)
    reel.story = []
    reel.tell(*paragraphs(50, 120, "everything"),
              notes=[prose(30, f"all {n}") if n % 2 else "" for n in range(50)])  # fmt: skip
    for number in range(385):
        words = "Part" if number % 5 else LONG_NAME
        reel.part(f"{words} {number + 1}", assembly=ASSEMBLIES[number * 8 // 385],
                  state=["original", "same-maker", "life", "missing", "not-determined"][number % 5])
    for number in range(40):
        reel.mark(f"pc-{number % 12 + 1}", f"MARK {number}\n" + prose(1 + number % 9, f"mark {number}"))
    for number in range(30):
        reel.replaced(f"Screw {number + 1}", why=prose(30, f"why {number}"))
    return reel
