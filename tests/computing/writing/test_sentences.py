"""Where sentences of spoken English end, line by line; a bar stands where one does."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from scriptkit.computing.writing.sentences import split

LINES = """
It gets an A. | Next up, the step.
That is an A minus. | Next.
We used e.g. bands, i.e. rubber ones. | Fine.
Bands vs. chains is old news. | Move on.
Ask Dr. Orre about it. | She knows.
Hold approx. ten seconds. | Rest.
Orre et al. found growth. | Lind did not.
Orre et al. (2021) found growth. | Lind did not.
At 6 a.m. I train. | At 7 p.m. I sleep.
We start at 6 a.m. | Then we rest.
We meet at 9 a.m. Monday. | Bring water.
It rose by 3.5 kg. | That is a lot.
It rose by 3.5. | That is a lot.
J. R. Orre wrote it. | It is long.
The paper by B. Lind is short. | Read it.
Well... maybe. | Who knows?
And then... | Nothing happened.
Wait… | What?
I am not sure... I think so.
He said “Stop.” | Then he left.
“Stop.” he said. | Then he left.
"Really?" she asked. | "Yes!" | He nodded.
What?! | No way.
Come on!!! | Lift it.
It comes in at No. 4. | Next is No. 3.
Is it any good? | No. | It is not.
See fig. 2 and p. 12. | Then go on.
Go to example.org. | It is free.
Visit https://example.org/a.b?c=d. | Use HILL10. | Thanks.
Open outline.yaml. | Change it.
It is 9:30. | Go.
In 2021. | 12 runners trained.
They trained hard. | 12 weeks later they stopped.
Take vitamin C. | It is sour.
Plan B. | We lift.
From A to B. | Heavy loads come next.
The U.S. Army tested it. | The U.K. did not.
They moved to the U.S. | It went well.
It is sold by Quennick Inc. in two sizes. | Fine.
Bands, chains, etc. | The rest is taste.
Bands, chains, etc. are fine.
(See the note.) | Now go.
It rose (a lot). | It fell.
It rose (by approx. 3 kg). | It fell.
1. Sit down. | 2. Stand up. | 3. Repeat.
How many sets? | 3. | Then rest.
So do I. | Next.
mTOR goes up. | mTOR goes down.
it works. | it is fine.
Rest 90 sec. | Then go again.
Rest min. 90 seconds. | Go.
He weighs 80 kg. | She weighs 60 kg.
Version 2.0.1 is out. | Get it.
The Ph.D. student left. | He has a Ph.D. | So what.
St. Orre is a place. | Mt. Lind too.
On Jan. 5 we met. | On Feb. 6 we parted.
It was 5 p.m. | 12 people came.
Do it "your way." | Or not.
It's ‘fine.’ | Go on.
Yes. | No. | Maybe.
One rep max. | Test it.
That is the max. | Load it.
He got a B+. | She got an A-. | I got a C.
The score is 4.2. | Exactly.
It is from the 90s. | Old.
... and then we lifted. | Done.
No full stop at the end
Dr. J. Orre, Ph.D., wrote it. | Really.
Is it "hard"? | Very.
Muscle grows when loaded (Orre, 2021). | It does.
At 70 %. | Then 80 %. | Done.
Strength rose 5 %. | Size did not.
The answer is C. | Why?
Mr. and Mrs. Lind lift. | So does Prof. Orre.
We tested the R.D.L. | It held.
Hello. | – And then? | — Yes.
Grade: A. | Reason: load.
Grade A. | Easy.
It scored a solid B. | Calves love it.
Ten reps, i.e. one set. | Done.
Cf. Orre 2021. | Done.
Who is J. Lind? | A coach.
Type II. | Fast fibres.
Option (a). | Option (b). | Done.
Don't lift (yet!) and rest. | OK?
What a lift (!) that was. | OK.
Heels down, e.g. on a wedge... that's it. | Done.
That's it.Next one has no space. | Fine.
Do 3 x 10. | Rest 2 min. | Repeat.
Use a 2 in. block. | Stand on it.
The max. load was 80 kg. | Heavy.
Coach Q. N. approved it. | Good.
I asked A. Lind. | He agreed.
Load it at approx. 70 % of your max. | Rest.
He benched 100 kg. | I did not.
That's the no. one mistake. | Stop it.
I saw it on p. 5. | It is true.
It has a pH of 7. | pH matters.
This is part 1. | Part 2 is next.
In sets of 8-12. | No more.
It cost $5. | Cheap.
It cost $5.50. | Cheap.
The code is HILL10. | Use it.
The interval is [0.06, 0.76]. | Wide.
Use it, etc. | I do.
Is it A or B? | It is B. | Sure?
It's a B. | But only just.
I give it a C. | Sorry.
And it earns an S. | Yes, an S.
My grade is a D. | Do something else.
Grade: C. | Calf raises deserve better.
It drops to a B. | Calf work is hard.
I gave it an A. | I love it.
"I can't do that." | "You can."
(I know.) | (You don't.)
The trial ran 10 wks. | Then it ended.
Rest 2-3 min. between sets. | Go.
It's 5 ft. 10 in. tall. | Big.
Tempo is 3-1-2. | Slow.
Go to https://example.org. | Then come back.
My dog J.J. barked. | He's loud.
It's on Dec. 12. | Mark it.
Well. | Okay. | So.
Hmm... | OK.
So... 12 reps.
No! | Not like that.
It works!! | Trust me.
No way?! | Yes way.
"Why?" | Good question.
'Why not?' | Good question.
It's the calf (the gastroc, esp. the medial head). | See?
That's me vs. you. | Fight.
What is RIR? | Reps in reserve.
He said, "Lift. | Then rest." | I did.
What about the soleus, the fish? | Deep.
At 9:30 p.m. we stop. | Bye.
She has a B.Sc. in sport. | Nice.
The study, n = 38. | Small.
It was Sat. | We rested.
Then we sat. | We rested.
It is fine, I think. | e.g. for beginners.
The band broke at 12 ft. | Ouch.
See Sec. 3. | Then rest.
See Table 2. | It shows.
Visit example.org/hill. | You get 10 % off.
Send it to me@example.org. | Thanks.
I lift Mon. through Fri. | That's it.
Yes, really. | 3.5 kg. | Not more.
The level is "high." | Good.
It gained 0.5 cm. | 0.5 cm is small.
Question 1. | Does it load the calf?
Add sets, reps, weight.... | You know.
No. 1. | The ledge raise.
No. 1 is the ledge raise. | It wins.
First: the set-up. | Second: the lift.
My pick is the B. | Lower the weight first.
Ask your G.P. about it. | Really.
It was 3.5 vs. 4.2 in favour of the raise. | Nice.
The trial by Orre B. et al. was small. | Still.
You get ten percent off. | 10 is a lot.
The set-up takes 20 s. | The set takes 40 s.
It is grade C+. | Not bad.
I'd call it a C-. | Calves disagree.
Here's the thing: it works. | Why? | Nobody knows.
“It works,” he said. | “Mostly.”
Is it fun? | (No.) | Is it good? | (Yes!)
See chap. 3 for more. | Or don't.
The fig. shows it. | Look.
Its mass is 5 kg... | Heavy.
Well... it's complicated.
I did it for 10 min... and then 10 more.
Stop at RPE 8. | Go on at RPE 9.
That's 3 sets of 8, 2 min. rest. | Go.
We have Lind, Orre, etc. | Both agree.
Read Lind et al. 2019. | Then Orre.
Okay... | So what?
It's No. 1! | Or is it?
He wrote to me@example.org. | Then called.
Go slow (approx. 3 s down). | Then up.
You want the U.K. version. | The U.S. one costs more.
My name is Q. N. Orre. | Hello.
I train at 6 a.m. | My cat does not.
It is 6 p.m. | We lift.
It costs approx. $40. | It lasts.
""".strip().splitlines()


def pieces(text: str) -> list[str]:
    return [text[start:end] for start, end in split(text)]


@pytest.mark.parametrize("line", LINES)
def test_sentences_end_at_the_bars(line: str) -> None:
    expected = line.split(" | ")
    assert pieces(" ".join(expected)) == expected


def test_white_space_around_sentences_belongs_to_none() -> None:
    assert pieces("  Heel down.\n\n Heel\nup.\t") == ["Heel down.", "Heel\nup."]


@pytest.mark.parametrize("text", ["", "  \n", "\u00a0"])
def test_a_blank_text_has_no_sentence(text: str) -> None:
    assert split(text) == []


def test_marks_alone_go_with_the_sentence_before() -> None:
    assert pieces("Heel down. ... Heel up. ”") == ["Heel down. ...", "Heel up. ”"]


@given(st.text(alphabet=st.sampled_from(list('aAbI1 .!?…"”’)(-,\n\u00a0éЖ😀')), max_size=60) | st.text(max_size=60))
def test_sentences_hold_every_character_but_white_space_once_and_in_order(text: str) -> None:
    spans = split(text)
    places = [place for start, end in spans for place in range(start, end)]
    assert places == sorted(set(places))
    assert all(text[start:end] == text[start:end].strip() != "" for start, end in spans)
    assert not set(range(len(text))).difference(places) - {at for at, char in enumerate(text) if char.isspace()}


@given(
    st.lists(
        st.sampled_from(["3.5 kg", "https://example.org/a.b?c=d.e", "10.5555/calf.7", "a.b@example.org", "v2.0.1"])
    )
)
def test_numbers_links_and_codes_are_never_split(parts: list[str]) -> None:
    text = " and ".join(["So", *parts, "so on."])
    assert pieces(text) == [text]
