/** The rules page of the demo venue. Figures of byelaws are in the facts with their sources; the rest is the club's own. */
export const RULES = `*Osierholt, its club, its waters, its pegs and everything logged on them are invented, to show what this guide does. No
such place exists where the map puts it: there is open farmland, and nothing to fish.*

## Before you fish

- Carry a current rod licence for the country you fish in, and the club's card or a paid day ticket.
- Draw at the lodge. Nobody walks to a peg before the draw is finished.
- Read the peg's own sheet first. Where it says closed, it is closed; where it names a limit for pole, cast or sector, the limit is not a suggestion.

## Overhead line

- No fishing, no tackling up and no camping chairs within 30 metres, along the ground, of any overhead line. Our allowance for the map is on top.
- Carry rods low and level, in the bag, wherever a path goes below the line. Set up at the water's edge, take down at the water's edge.
- Tackle on the wires: leave it, keep everyone away and ring 105, or 999 where there is danger to life. Never pull.

## Nets and fish

- Keepnets in matches only, and only while the organiser allows them: two in summer, carp and silvers apart.
- Keepnets follow the national byelaws for mesh, ring size and length where you fish; the club checks them at the draw. Wet or dipped nets from another water dry out first: check, clean, dry.
- At most 50 lb of carp or 30 lb of silvers a net; ask for a weigh-in and a second net before that. (The club's own figures.)
- Landing nets soft and knotless. Barbless hooks to size 12. An unhooking mat on every carp over 5 lb.
- Above 21 °C in the margins: no keepnets for carp, several weigh-ins, and matches shortened if the organiser says so.

## Bait and feed

- No floating bait, no boilies, no nuts. Groundbait where the water's notice board allows it, by ball or pot.
- Up to 2 pints of hemp, 4 pints of anything else on the bank in a match.
- No bloodworm or joker from November to February unless the match is announced as such.

## On the bank

- Pole to 16 m, cast to 40 m, and straight in front of you: 45° either side of your peg's line at most.
- No wading, no swimming, no stepping on ice. Throw lines hang about every hundred metres: look for yours when you arrive.
- Cutting, lopping and clearing are for club work parties only, outside the nesting months, and never on a protected tree.
- Lightning: rods down at the first thunder, and half an hour after the last of it.
- Take your litter, your line and your bait tins home. Wash your hands before you eat: there are rats on every water.

## When these rules and others differ

The law, byelaws, the water's own notice board and the bailiff's word on the day go before this page. Electricity work is
done by the network operator, tree work by people licensed to do it.`;
