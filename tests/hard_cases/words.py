"""Plain sentences of any length, the same every time, in which every paragraph is another."""

import random

WHO = ["The ferryman", "Her aunt", "The purser", "A neighbour", "The boy from the mill", "Her father",
       "The lock keeper", "Somebody"]  # fmt: skip
DID = ["carried it down to the landing", "put it back in its flannel", "lost the screw in the grass",
       "oiled the bearings with what he had", "fished it until the lamps were lit",
       "would not have it cleaned", "wound the line on again by hand",
       "kept it in the drawer under the stairs", "said that it ran better than before"]  # fmt: skip
WHEN = ["in the autumn of that year", "before the ice came", "when the mill stood still", "as a rule",
        "the summer after the flood", "for as long as anybody remembers", "on the first of May",
        "and told nobody"]  # fmt: skip


def prose(count, seed):
    """Sentences of `count` words or a few more."""
    dice = random.Random(seed)
    out = []
    while sum(len(sentence.split()) for sentence in out) < count:
        out.append(f"{dice.choice(WHO)} {dice.choice(DID)} {dice.choice(WHEN)}.")
    return " ".join(out)


def paragraphs(number, count, seed):
    """`number` paragraphs of about `count` words."""
    return [prose(count, f"{seed}/{n}") for n in range(number)]


def long_word(letters):
    """One word of so many letters, without a place to break it."""
    return ("abcdefghijklmnopqrstuvwxyz" * (letters // 26 + 1))[:letters]
