#!/bin/sh
# A whole job, from drop-off to hand-back, through commands alone.
#
#   whole_job.sh WINCHBOOK REEL PHOTOS
#
# Makes the folder REEL with its record; the photographs as the camera left them lie in PHOTOS. Written
# by as_commands.py from the heirloom of the demo; check_whole_job.py compares the two.
set -u
winchbook=$1
reel=$2
photos=$3
today=2026-06-30

w() {
  if ! "$winchbook" "$@" --today "$today" >"$reel.log" 2>&1; then
    echo "refused: winchbook $*" >&2
    cat "$reel.log" >&2
    exit 1
  fi
}

# Drop-off, 2014-05-12
w intake "$reel" --lang en-GB --on 2014-05-12 --bench 'The Lantern Bench' --bench-place 'Carrick Sound' --bench-address '4 Sail Loft Steps
Carrick Sound' --bench-contact 'by letter, or at the door when the lantern is lit' --restorer 'Ines Thornbury' --kind multiplier --brake star --model 'Skerry No. 40' --name 'The Ferry Skerry' --no-places --owner-id edwin --owner 'Edwin Merrow' --owner-short Edwin --owner-stand-in 'the second owner' --owner-named-to owner --brought-by edwin --by ines --arrived 'In the biscuit tin, whole but for the click’s tongue, stiff with old oil.' --use fish --wish 'To have it ready for the summer, and the outside let be.'
w person "$reel" ines --known --short Ines --stand-in 'the restorer' --who 'restorer at the Lantern Bench' --named-to anyone

# Everybody whom the record names
w person "$reel" 'Augusta Merrow' --id gus --short Gus --stand-in 'the first owner' --who 'purser of the Ellery Sound ferry, 1941 to 1970' --lived 1911/1983 --named-to insurer
w person "$reel" 'Tobias Vane' --id tobias --short Tobias --stand-in 'a joiner in the family' --who 'joiner, married to the sister of <person ref="gus"/>' --lived '1908~/1971' --named-to owner
w person "$reel" edwin --known --who 'son of a brother of <person ref="gus"/>'
w person "$reel" 'Nell Merrow' --id nell --short Nell --stand-in 'the owner' --who 'daughter of <person ref="edwin"/>' --address '2 Ferry Row, Carrick Sound' --contact 'by letter, or at the bench door' --named-to insurer

# The places of the reel, what sits there, and what came with it
w part "$reel" 'Handle-side plate' --id handle-plate --material 'hard rubber' --note 'With its brass oil cap. Black where the star covered it, olive-brown round about.' --place 'Handle-side plate' --place-id pl-handle-plate --kind handle-plate --assembly 'handle side' --fitted-by maker
w part "$reel" 'Handle-side ring' --id handle-ring --material brass --finish 'nickel plate (maker)' --place 'Handle-side ring' --place-id pl-handle-ring --kind handle-ring --assembly 'handle side' --fitted-by maker
w part "$reel" 'Handle-plate screws' --id handle-screws --count 6 --material brass --finish 'nickel plate (maker)' --place 'Handle-plate screws' --place-id pl-handle-screws --kind plate-screw --assembly 'handle side' --quantity 6 --fitted-by maker
w part "$reel" 'Gear cap' --id gear-cap --material brass --finish 'nickel plate (maker): Rubbed with something gritty across the name before 2014.' --place 'Gear cap' --place-id pl-gear-cap --kind gear-cap --assembly 'handle side' --fitted-by maker
w part "$reel" 'Gear-cap screws' --id cap-screws --count 4 --material brass --finish 'nickel plate (maker)' --place 'Gear-cap screws' --place-id pl-cap-screws --kind plate-screw --assembly 'handle side' --quantity 4 --fitted-by maker
w part "$reel" 'Free-spool lever, with its cam' --id lever --material brass --finish 'nickel plate (maker)' --place 'Free-spool lever' --place-id pl-lever --kind free-spool-lever --assembly 'handle side' --fitted-by maker
w part "$reel" 'Tail-side plate' --id tail-plate --material 'hard rubber' --finish 'white paint in the moulded letters (maker): Sound; thin in the Y of SKERRY.' --place 'Tail-side plate' --place-id pl-tail-plate --kind tail-plate --assembly 'tail side' --fitted-by maker
w part "$reel" 'Tail-side ring' --id tail-ring --material brass --finish 'nickel plate (maker): Gone to the brass along the upper edge.' --place 'Tail-side ring' --place-id pl-tail-ring --kind tail-ring --assembly 'tail side' --fitted-by maker
w part "$reel" 'Tail-plate screws' --id tail-screws --count 5 --material brass --finish 'nickel plate (maker)' --place 'Tail-plate screws' --place-id pl-tail-screws --kind plate-screw --assembly 'tail side' --quantity 5 --fitted-by maker
w part "$reel" 'Wood screw, in the fourth hole' --id wood-screw --material steel --note '11.5 mm long; rusted in the first four turns.' --place 'Tail-plate screw, the fourth' --place-id pl-tail-screw-4 --kind plate-screw --assembly 'tail side' --quantity 1 --fitted-by not-known
w part "$reel" 'Click button' --id click-button --material brass --finish 'nickel plate (maker)' --place 'Click button' --place-id pl-click-button --kind click-button --assembly 'tail side' --fitted-by maker
w part "$reel" 'Click tongue' --empty --place-id pl-click-tongue --kind click-tongue --assembly 'tail side'
w part "$reel" 'Click spring' --id click-spring --material steel --place 'Click spring' --place-id pl-click-spring --kind click-spring --assembly 'tail side' --spring --fitted-by maker
w part "$reel" Foot --id foot --material brass --finish 'nickel plate (maker): Worn at the two ends, where the rod’s bands gripped.' --place Foot --place-id pl-foot --kind foot --assembly frame --fitted-by maker
w part "$reel" 'Foot screws' --id foot-screws --count 2 --material brass --finish 'nickel plate (maker)' --place 'Foot screws' --place-id pl-foot-screws --kind foot-screw --assembly frame --quantity 2 --fitted-by maker
w part "$reel" Pillars --id pillars --count 6 --material brass --finish 'nickel plate (maker): Worn to the brass on the side where the line runs and the thumb rests.' --place Pillars --place-id pl-pillars --kind pillar --assembly frame --quantity 6 --fitted-by maker
w part "$reel" 'Bearing cap, handle side' --id bearing-cap --material brass --finish 'nickel plate (maker)' --place 'Spindle bearing caps' --place-id pl-caps --kind bearing-cap --assembly frame --quantity 2 --fitted-by maker
w part "$reel" 'Bearing cap, tail side' --id bearing-cap-tail --material brass --finish 'nickel plate (maker)' --place pl-caps --fitted-by not-known
w part "$reel" Spool --id spool --material brass --finish 'nickel plate (maker)' --place Spool --place-id pl-spool --kind spool --assembly spool --fitted-by maker
w part "$reel" 'Spool spindle' --id spindle --material steel --note 'True to 0.02 mm between centres.' --place 'Spool spindle' --place-id pl-spindle --kind spool-spindle --assembly spool --fitted-by maker
w part "$reel" 'Bridge, with its posts' --id bridge --material brass --place Bridge --place-id pl-bridge --kind bridge --assembly gears --fitted-by maker
w part "$reel" 'Main gear' --id main-gear --material bronze --place 'Main gear' --place-id pl-main-gear --kind main-gear --assembly gears --fitted-by maker
w part "$reel" Pinion --id pinion-old --material brass --note 'Four of its fourteen teeth are worn to hooks along 6 mm.' --place Pinion --place-id pl-pinion --kind pinion --assembly gears --fitted-by maker
w part "$reel" 'Pinion yoke' --id yoke --material brass --place 'Pinion yoke' --place-id pl-yoke --kind pinion-yoke --assembly gears --fitted-by maker
w part "$reel" 'Yoke springs' --id yoke-springs --count 2 --material steel --place 'Yoke springs' --place-id pl-yoke-springs --kind yoke-spring --assembly gears --quantity 2 --spring --fitted-by not-known
w part "$reel" 'Gear sleeve' --id sleeve --material steel --place 'Gear sleeve' --place-id pl-sleeve --kind gear-sleeve --assembly gears --fitted-by maker
w part "$reel" Dog --id dog --material steel --place Dog --place-id pl-dog --kind dog --assembly gears --fitted-by maker
w part "$reel" 'Dog spring, the longer part' --id dog-spring-old --material steel --note 'Broken in the second turn of its coil.' --place 'Dog spring' --place-id pl-dog-spring --kind dog-spring --assembly gears --spring --fitted-by maker
w part "$reel" 'Drag washers of leather' --id leather-washers --count 3 --material leather --place 'Drag washers, soft' --place-id pl-soft-washers --kind drag-washer --assembly drag --quantity 3 --consumable --fitted-by not-known
w part "$reel" 'Drag washers of steel with ears' --id metal-eared --count 2 --material steel --place 'Drag washers, metal' --place-id pl-metal-washers --kind drag-plate --assembly drag --quantity 3 --fitted-by maker
w part "$reel" 'Drag washer of steel with flats' --id metal-keyed --material steel --place pl-metal-washers --fitted-by maker
w part "$reel" 'Tension washer' --id tension-washer --material steel --place 'Tension washer' --place-id pl-tension-washer --kind tension-washer --assembly drag --fitted-by maker
w part "$reel" Spacer --id spacer --material brass --place Spacer --place-id pl-spacer --kind spacer-sleeve --assembly drag --fitted-by maker
w part "$reel" Star --id star --material brass --finish 'nickel plate (maker)' --place Star --place-id pl-star --kind star --assembly drag --fitted-by maker
w part "$reel" 'Handle arm' --id handle-arm --material brass --finish 'nickel plate (maker): Worn at the waist.' --place 'Handle arm' --place-id pl-handle-arm --kind handle-arm --assembly handle --fitted-by maker
w part "$reel" 'Knob, turned from the ferry’s handrail' --id knob --material teak --finish 'linseed oil (life, 1962-08)' --made 1962-08 --place Knob --place-id pl-knob --kind knob --assembly handle --fitted-by tobias --from 1962-08
w part "$reel" 'Knob spindle' --id knob-spindle --material steel --place 'Knob spindle' --place-id pl-knob-spindle --kind knob-spindle --assembly handle --fitted-by maker
w part "$reel" 'Handle nut' --id handle-nut --material brass --finish 'nickel plate (maker): Corners rounded by pliers before 2014.' --place 'Handle nut' --place-id pl-handle-nut --kind handle-nut --assembly handle --fitted-by maker
w part "$reel" 'Handle-nut lock screw, the maker’s' --id lock-screw-old --material brass --finish 'nickel plate (maker)' --place 'Handle-nut lock screw' --place-id pl-lock-screw --kind handle-lock-screw --assembly handle --fitted-by maker
w part "$reel" 'Dog spring, the part broken off' --id dog-spring-part --material steel --fragment-of dog-spring-old --note 'Found in the grease behind the main gear.'
w part "$reel" 'Biscuit tin' --id tin --role content --material tinplate
w part "$reel" 'Piece of grey flannel' --id flannel --role content --material wool
w part "$reel" 'Ferry ticket, return half' --id ticket --role content --material card
w part "$reel" 'Line, linen, about 95 m' --id old-line --role content --material linen
w part "$reel" 'Line, braided polyester, 100 m' --id new-line --role content --material polyester
w agree "$reel" --id ag-2014 --on 2014-05-12 --how 'in person' --with edwin --may-be-done 'Clean and grease the gears. New washers for the drag.' --must-stay 'The outside, dirt and all.' --must-stay 'The knob.' --part-must-stay knob --limit '60.00 GBP' --note 'He did not want a tongue made for the click: “I should have to explain where I was.”'

# As found
w grade "$reel" leather-washers --set fitted --by ines --note 'Hard, oil-black, one split.' --on 2014-05-12
w grade "$reel" main-gear --set 'fitted, untouched 100' --by ines --on 2014-05-12
w grade "$reel" pinion-old --set 'fitted, untouched 80, worn through 20' --by ines --note 'Worn, still whole.' --on 2014-05-12
w grade "$reel" dog-spring-old --set 'fitted, untouched 100' --by ines --note Tired. --on 2014-05-12
w grade "$reel" lock-screw-old --set fitted --by ines --on 2014-05-12
w grade "$reel" --place pl-click-tongue --set empty --on 2014-05-12
w test "$reel" 'Drag at the line' --before '0 to 9 N' --verdict in-part --on 2014-05-12

# Taken apart
w tray "$reel" --off leather-washers --on 2014-05-12

# Cleaned
w clean "$reel" main-gear pinion-old bridge yoke --method 'white spirit by brush' --material 'brass and bronze' --minutes 20 --what 'Degreased by brush in the open, dried, greased anew. The handle side only.' --caution 'Solvent: Flammable. Open air, gloves, no flame.' --on 2014-05-12

# Put in
w fit "$reel" 'Drag washers of cork' --place pl-soft-washers --instead-of leather-washers --label 'bag 1' --id cork-washers --count 3 --material cork --made --why 'The leather had gone hard and slipped.' --adaptation None. --way-back '100: Fully. Nothing of the reel was touched for them.' --on 2014-05-20

# Worked on, put back, and proved
w work "$reel" 'Cut three drag washers from 1.6 mm cork sheet.' --part cork-washers --by ines --on 2014-05-20 --hours 0.75 --parts-cost '1.50 GBP'
w work "$reel" 'Cleaned and greased the gears; put together and tested.' --by ines --on 2014-05-20 --until 2014-05-23 --hours 2.0
w grade "$reel" cork-washers lock-screw-old --set fitted --left --by ines --on 2014-05-23
w grade "$reel" main-gear --set 'fitted, cleaned 100' --left --by ines --on 2014-05-23
w grade "$reel" pinion-old --set 'fitted, cleaned 80, worn through 20' --left --by ines --on 2014-05-23
w grade "$reel" dog-spring-old --set 'fitted, untouched 100' --left --by ines --on 2014-05-23
w grade "$reel" --place pl-click-tongue --set empty --left --note 'With the spool out there was no tongue on the pin.' --on 2014-05-23
w test "$reel" 'Drag at the line' --after '3 to 22 N' --verdict as-made --on 2014-05-23
w grade "$reel" tail-plate --fault crack --fault-name 'hairline crack at the fourth tail-plate screw' --size 9 --found-severity weakening --left-severity weakening --what 'Runs inward from under a wood screw that is not the maker’s. The owner was told; the tail plate was not lifted.' --stays-because 'Not part of what was asked.' --on 2014-05-23

# Hand-back
w handback "$reel" --on 2014-05-23 --to edwin --bag 'bag 1' --note 'Told to keep an eye on the crack.' --next-service 2018 --summary 'The gears cleaned and greased, the drag given washers of cork; the leather ones taken out were kept in bag 1. It did not go fishing.'

# Drop-off, 2026-03-03
w intake "$reel" --again --on 2026-03-03 --owner nell --brought-by nell --by ines --arrived 'In a biscuit tin, complete but for two small pieces, honestly worn, and no longer able to hold a fish.' --number 26-011 --promised-by 2026-06 --use fish-and-show --wish '“From the landing this summer, in my hands, and on the shelf in the winter. And don’t make it look new.”' --rank memory,use,originality,way-back,cost,value --how 'in person, the receipt signed by both' --with nell --may-be-done 'Ines may take it apart to look, before anything is decided, and say what it needs.' --may-be-done 'Whatever keeps it from fishing, once the list has been talked over.' --must-stay 'The teak knob.' --must-stay 'The engraving on the foot.' --must-stay 'The surfaces as they are: no polish, no plating, no dye.' --limit '120.00 GBP' --agreement-id ag-intake --part-must-stay knob --part-must-stay foot
w agree "$reel" --id ag-list --on 2026-03-11 --how 'in person, over the open tray' --with nell --may-be-done 'A pinion, a dog spring, washers, a tongue, two screws; two broken reels may be bought for parts.' --limit '340.00 GBP' --note 'Every old piece comes back to her in a bag.'
w agree "$reel" --id ag-hole --on 2026-04-28 --how 'by telephone' --with nell --may-be-done 'Turn a screw to fit the old hole.' --must-stay 'No new hole, and none made larger.' --note 'The bench asked whether the fourth hole might be bored and bushed for a stock screw. She asked what he would have said who would not paint over the ferry.'
w agree "$reel" --id ag-line --on 2026-06-09 --how 'by telephone' --with nell --may-be-done 'New line, as much as there was of the old. The old line to come back on a card.' --limit '355.00 GBP' --note 'Fifteen pounds more than was agreed on 11 March.'

# What gave parts
w donor "$reel" 'a broken Skerry No. 30, by the same maker' --id no-30 --same-maker --note 'The next size down, with the same gears. Its tail plate was in four pieces and its foot had been filed; serial H 2206. What was not used stays in the bench’s spares, in its own bag.' --on 2026-03-24 --cost '45.00 GBP'
w donor "$reel" 'a Calder & Finch “Breaker 3/0”, broken for parts' --id breaker --note 'Spool cracked through; bought by post for its drag. Its own fibre washers are not tested and stay whole in their bag.' --on 2026-04-02 --cost '22.50 GBP'

# The parts that will be put in, each before it is photographed
w part "$reel" 'Tail-plate screw' --id screw-new --material 'nickel silver' --made 2026-05-14 --note 'Bare nickel silver, a shade yellower than the five, so that it can be told from them.'
w part "$reel" 'Click tongue' --id tongue-new --material 'nickel silver' --made 2026-05-12
w part "$reel" Pinion --id pinion-new --material brass --donor no-30
w part "$reel" 'Dog spring' --id dog-spring-new --material steel --donor no-30
w part "$reel" 'Drag washers' --id red-washers --count 3 --material leather --maker-name 'Tarn Friction' --supplier 'Tarn Friction, Oldbeck'
w part "$reel" 'Handle-nut lock screw' --id lock-screw-new --material brass --finish 'nickel plate (maker)' --maker-name 'Calder & Finch' --donor breaker

# Photographs
w photo add "$reel" "$photos/hero-found.jpg" --name hero-found --stage as-found --taken 2026-03-05 --by ines --part handle-plate --part star --part handle-arm --part knob --part old-line --caption 'The reel as it came out of the flannel.' --alt 'A multiplying reel with a five-armed star and a wooden knob stands on a bench. Its metal is dull, its plate brown, its line yellow with age.' --on 2026-03-05
w photo add "$reel" "$photos/hero-left.jpg" --name hero-left --stage as-left --taken 2026-06-12 --by ines --part handle-plate --part star --part handle-arm --part knob --part new-line --pair-of ph-hero-found --caption 'Cleaned and mended.' --alt 'The reel from the same side as when it came. The metal has a quiet shine with its wear still on it; the plate is darker and the line is new and pale.' --on 2026-06-12
w photo add "$reel" "$photos/tail-found.jpg" --name tail-found --stage as-found --taken 2026-03-05 --by ines --part tail-plate --part tail-ring --part wood-screw --caption 'Tail side. The wood screw and the crack are at the lower right.' --alt 'The round tail plate with the maker’s name, SKERRY, No. 40 and the patent number in worn white letters. At the lower right one screw is larger than the rest, rusty, and stands proud; a fine crack runs inward from it.' --on 2026-03-05
w photo add "$reel" "$photos/tail-left.jpg" --name tail-left --stage as-left --taken 2026-06-12 --by ines --part tail-plate --part tail-ring --part screw-new --pair-of ph-tail-found --caption 'Tail side, the fourth screw replaced. The crack is there still.' --alt 'The same plate, clean, the letters white. All six screws look alike, and the fine crack still runs from the fourth.' --on 2026-06-12
w photo add "$reel" "$photos/foot-found.jpg" --name foot --stage as-found --taken 2026-03-05 --by ines --part foot --caption 'The foot, underside: country, serial number and the engraving of 1948.' --alt 'The reel lies upside down behind a rule. The long foot is stamped MADE IN U.S.A. to the left of its two screws and H 4417 to the right; along its far edge it is engraved A. <person ref="gus">MERROW</person>, FERRY LANDING, 1948.' --scale 'rule in centimetres and millimetres' --shows gus --on 2026-03-05
w photo add "$reel" "$photos/tray.jpg" --name tray --stage strip-down --taken 2026-03-10 --by ines --part handle-nut --part star --part spacer --part tension-washer --part cap-screws --part metal-eared --part metal-keyed --part cork-washers --part main-gear --part pinion-old --part yoke --part bridge --part dog --part dog-spring-old --part tail-screws --part wood-screw --part bearing-cap --part bearing-cap-tail --caption 'The tray: its twelve places in the order in which the small parts came off.' --alt 'A steel tray lined with felt and chalked into twelve numbered places, with nut, star, spacer, screws, washers, gears, bridge, dog, a broken spring and bearing caps laid in them.' --scale 'rule in centimetres and millimetres' --on 2026-03-10
w photo add "$reel" "$photos/plating-worn.jpg" --name plating --stage as-found --taken 2026-03-05 --by ines --part tail-ring --part pillars --caption 'The tail ring and a pillar: nickel worn to the brass.' --alt 'Close view of the edge of the tail plate. Yellow brass shows along the rim of the ring and on the side of a pillar where the grey nickel has worn away.' --on 2026-03-05
w photo add "$reel" "$photos/grease-found.jpg" --name grease-found --stage as-found --taken 2026-03-09 --by ines --part main-gear --part pinion-old --caption 'Main gear and pinion under the grease of 2014.' --alt 'A bronze gear smeared with brown, crusted grease, and beside it a brass pinion with several teeth worn thin.' --on 2026-03-09
w photo add "$reel" "$photos/gears-left.jpg" --name gears-left --stage as-left --taken 2026-06-02 --by ines --part main-gear --part pinion-new --pair-of ph-grease-found --caption 'The same gear, clean, with the pinion of the No. 30.' --alt 'The bronze gear clean and evenly coloured, and beside it a brass pinion with fourteen whole teeth.' --on 2026-06-02
w photo add "$reel" "$photos/drag-found.jpg" --name drag-found --stage as-found --taken 2026-03-09 --by ines --part cork-washers --part metal-eared --part metal-keyed --caption 'The drag laid out: three washers of cork, three of steel.' --alt 'Six washers in a slanting row above a rule, cork and steel by turns. The cork is ragged, and a piece is gone from the edge of the middle one.' --scale 'rule in centimetres and millimetres' --on 2026-03-09
w photo add "$reel" "$photos/drag-left.jpg" --name drag-left --stage as-left --taken 2026-06-02 --by ines --part red-washers --part metal-eared --part metal-keyed --pair-of ph-drag-found --caption 'The same with the washers of red leather.' --alt 'The same row: three clean red washers where the cork was, the three steel ones as before.' --scale 'rule in centimetres and millimetres' --on 2026-06-02
w photo add "$reel" "$photos/knob.jpg" --name knob --stage as-left --taken 2026-06-12 --by ines --part knob --part handle-arm --caption 'The knob of 1962, from the ferry’s handrail.' --alt 'A turned wooden knob, reddish brown and worn smooth, at the end of a nickel handle arm. A fine ring is cut round its fullest part, and the grain curves.' --on 2026-06-12
w photo add "$reel" "$photos/part-pinion-old.jpg" --name pinion-old --stage strip-down --taken 2026-03-10 --by ines --part pinion-old --caption 'The pinion that came out; four teeth hooked.' --alt 'A small brass gear with a grooved neck. Its teeth are worn thin in the middle and whole at the ends.' --on 2026-03-10
w photo add "$reel" "$photos/part-pinion-new.jpg" --name pinion-new --stage fitting --taken 2026-04-22 --by ines --part pinion-new --caption 'The pinion that went in.' --alt 'A small brass gear with a grooved neck and fourteen even teeth.' --on 2026-04-22
w photo add "$reel" "$photos/part-washers-old.jpg" --name washers-old --stage strip-down --taken 2026-03-10 --by ines --part cork-washers --caption 'The bench’s cork of 2014.' --alt 'Three crumbling washers of cork, one with a piece gone from its edge, and crumbs about them.' --on 2026-03-10
w photo add "$reel" "$photos/part-washers-new.jpg" --name washers-new --stage fitting --taken 2026-04-24 --by ines --part red-washers --caption 'Red leather, trimmed.' --alt 'Three smooth red washers with clean edges.' --on 2026-04-24
w photo add "$reel" "$photos/part-spring-old.jpg" --name spring-old --stage strip-down --taken 2026-03-10 --by ines --part dog-spring-old --part dog-spring-part --caption 'The dog spring in its two parts.' --alt 'A hairpin spring of dark wire broken in its coil, the two parts side by side.' --on 2026-03-10
w photo add "$reel" "$photos/part-spring-new.jpg" --name spring-new --stage fitting --taken 2026-04-22 --by ines --part dog-spring-new --caption 'The dog spring of the No. 30.' --alt 'A whole hairpin spring: a small coil with two legs.' --on 2026-04-22
w photo add "$reel" "$photos/part-tongue-new.jpg" --name tongue-new --stage fitting --taken 2026-05-12 --by ines --part tongue-new --caption 'The tongue filed at the bench.' --alt 'A small flat tongue of pale metal with one round hole and a blunt nose.' --on 2026-05-12
w photo add "$reel" "$photos/part-screw-old.jpg" --name screw-old --stage strip-down --taken 2026-05-14 --by ines --part wood-screw --caption 'The wood screw.' --alt 'A rusty steel wood screw with a coarse thread and a point.' --on 2026-05-14
w photo add "$reel" "$photos/part-screw-new.jpg" --name screw-new --stage fitting --taken 2026-05-14 --by ines --part screw-new --caption 'The screw turned at the bench.' --alt 'A small bright screw with a slotted head and a fine thread.' --on 2026-05-14
w photo add "$reel" "$photos/part-lock-new.jpg" --name lock-new --stage fitting --taken 2026-05-14 --by ines --part lock-screw-new --caption 'The lock screw of the Breaker.' --alt 'A very small bright screw with a tall slotted head.' --on 2026-05-14
w part "$reel" cork-washers --known --photo ph-washers-old

# Marks, as they were read
w mark "$reel" 'HARROWAY REEL WORKS · PORT ELLERY' --id mk-maker --part tail-plate --where 'outside, round the upper edge' --method moulded --whose maker --state as-struck --legibility clear --not-after '1956 soft' --because 'The works closed in 1956.' --source 'the bench’s maker file: the notice of the closing sale' --photo ph-tail-found
w mark "$reel" SKERRY --id mk-model --part tail-plate --where 'outside, above the bearing cap' --method moulded --whose maker --state as-struck --legibility clear --not-before '1938 soft' --because 'The earliest list of the maker that names a Skerry.' --source 'the bench’s maker file: list of spring 1938' --photo ph-tail-found
w mark "$reel" 'No. 40' --id mk-number --part tail-plate --where 'outside, below the bearing cap' --method moulded --whose maker --state as-struck --legibility clear --note 'The size. It was in the list from the first to the last and says nothing of the year.' --photo ph-tail-found
w mark "$reel" 'PAT. 2,185,170' --id mk-patent --part tail-plate --where 'outside, lower edge' --method moulded --whose maker --state as-struck --legibility clear --not-before '1940-01-02 hard' --not-after '1957-01-02 soft' --because 'Issued on Tuesday 2 January 1940, and not cited by its number before. It ran for seventeen years; few makers went on citing one that had run out.' --source 'the patent as printed' --photo ph-tail-found
w mark "$reel" '40-T 3' --id mk-mould --part tail-plate --where 'inside, by the click' --method moulded --whose maker --state as-struck --legibility clear --not-before '1946 soft' --not-after '1951 soft' --because 'The third mould of this plate. The second is known on a reel engraved in 1946, the fourth on one given in 1951.' --source 'the bench’s maker file: five dated reels'
w mark "$reel" 'MADE IN U.S.A.' --id mk-country --part foot --where 'underside, one end' --method stamped --whose maker --state as-struck --legibility clear --note 'It names a country and no year.' --photo ph-foot
w mark "$reel" 'H 4417' --id mk-serial --part foot --where 'underside, other end' --method stamped --whose maker --state as-struck --legibility clear --not-before '1947 soft' --not-after '1949 soft' --because 'Between H 3902, sold in May 1947, and H 5120, given at Christmas 1949.' --source 'the bench’s maker file: seven dated reels' --photo ph-foot --serial
w mark "$reel" 'A. MERROW · FERRY LANDING · 1948' --id mk-owner --part foot --where 'underside, along one edge' --method engraved --whose owner --state worn --legibility clear --person gus --claims 1948 --cut 1948/1979 --not-after '1948 soft' --because 'The reel is not younger than its own engraving, if the engraving was cut when it says. Soft, since an engraving can be cut later.' --note 'Letters 4 mm high.' --photo ph-foot
w mark "$reel" HARROWAY --id mk-cap --part gear-cap --where outside --method stamped --whose maker --state worn --legibility in-part --not-before '1946 soft' --because 'Caps of the pre-war years are domed and bear no name.' --source 'the bench’s maker file: four dated reels' --note 'The H and the A are rubbed.'
w mark "$reel" 30 --id mk-gear --part main-gear --where 'web, outer face' --method stamped --whose maker --state as-struck --legibility clear --note 'Half of its sixty teeth. The maker numbered gears so from first to last.'
w mark "$reel" 7 --id mk-pinion --part pinion-old --where 'end of the sleeve' --method stamped --whose maker --state as-struck --legibility clear --note 'Half of its fourteen teeth.'
w mark "$reel" 'T.V. Aug 62' --id mk-pencil --part handle-plate --where 'inside, beside the bridge' --method pencilled --whose repairer --state as-struck --legibility clear --person tobias --claims 1962-08 --not-after '1962-08 soft' --because 'The plate was on the reel when this was written inside it.' --note 'Not rubbed out, not gone over.'
w mark "$reel" 7 --id mk-pinion-new --part pinion-new --where 'end of the sleeve' --method stamped --whose maker --state as-struck --legibility clear --note 'As on the old one.'
w mark "$reel" 'LB 26' --id mk-lb-tongue --part tongue-new --where 'hidden face' --method stamped --whose repairer --state as-struck --legibility clear --claims 2026 --note 'This bench’s own mark, so that nobody takes the piece for the maker’s.'
w mark "$reel" 'LB 26' --id mk-lb-screw --part screw-new --where 'under the head' --method stamped --whose repairer --state as-struck --legibility clear --claims 2026 --note 'As on the tongue; 0.8 mm high.'

# What the reel is
w identify "$reel" --maker 'Harroway Reel Works' --maker-kind made-by --maker-place 'Port Ellery' --still-trading no --certainty certain --because 'The name is moulded in the tail plate and stamped on the gear cap.' --mark mk-maker --mark mk-cap --photo ph-tail-found
w identify "$reel" --made 1947/1948 --certainty likely --because 'The patent’s number was not given out before January 1940, so the tail plate cannot be older; that end is law. Hardly a reel was made between 1942 and 1945, and the cap that bears the maker’s name came in after the war. The serial number says most: it lies between one sold in May 1947 and one given at Christmas 1949. The engraving says 1948 and the family says that it was cut when the reel was new. An engraving can lie, and families forget; here each leans on the other and neither has to bend.' --mark mk-patent --mark mk-cap --mark mk-serial --mark mk-mould --mark mk-owner --photo ph-tail-found --photo ph-foot --told-by nell
w identify "$reel" --hand 'right, right, right' --box-and-papers 'A biscuit tin, a piece of flannel and half a ferry ticket. No box, no papers.' --cover ph-hero-left --own-interest 'None in the reel: the bench has never owned or sold it. It serviced it in 2014 and so judges some of its own work here.' --terms 'Kept for a year after the day it was promised for, and written about twice before anything is done with it. The law of the place comes first.'
w measure "$reel" 'diameter over the rings' '74.0 mm'
w measure "$reel" 'width between the plates' '47.0 mm'
w measure "$reel" 'spool flange' '61.0 mm'
w measure "$reel" 'foot, end to end' '94.0 mm'
w measure "$reel" --capacity '210 m' --of-line '0.60 mm' --source 'reckoned from the spool as measured'
w measure "$reel" --weight '612 g' --gear-ratio 4.286

# Who had it
w custody "$reel" --id cu-shop --from 1947 --until 1948 --how 'from the works to a shop; no retailer’s mark is on the reel, and no receipt is known'
w custody "$reel" gus --id cu-gus --held both --from 1948 --until 1979 --how 'bought new' --source 'Told by the owner; the engraving on the foot names the year.' --certainty likely --photo ph-foot
w custody "$reel" edwin --id cu-edwin --held possession --from 1979 --until 2025-05 --how 'lent to him to fish with' --source 'Told by him at this bench, 12 May 2014.' --certainty certain
w custody "$reel" edwin --id cu-edwin-title --held title --from 1983 --until 2025-05-11 --how 'by her will, “my reel, to the one who uses it”' --source 'Her will; copy seen 3 March 2026.' --certainty certain
w custody "$reel" nell --id cu-nell --held both --from 2025-05-11 --how 'given by her father' --source 'His letter of 11 May 2025, seen 3 March 2026.' --certainty certain

# What happened to it before it came here, and its story
w story "$reel" 'Her name, the landing and the year were cut by hand along the underside of the foot. The letters are shallow, even and well spaced; whoever cut them did it for a living. The graver went through the nickel, and the brass in the cuts has darkened.' --event engraving --id le-engraving --title 'The name on the foot' --as-told 'before it was ever wet' --date 1948 --part foot --source 'The engraving itself; told by the owner.' --certainty likely --keep-because 'It says whose it was and where it belongs.' --must-stay foot --photo ph-foot
w story "$reel" 'The arm came 2 mm nearer to the star and has stayed there. The maker’s knob, black and most likely of hard rubber, split along its length; the halves were not kept.' --event damage --id le-fall --title 'The fall from the landing' --as-told 'the August they were mending the rail' --date 1962-08 --part handle-arm --source 'Told by the owner, as she had it from her father.' --certainty likely
w story "$reel" '<person ref="tobias"/> turned the knob between two crossings, from an offcut of the old handrail, and hung it on the maker’s spindle. Its ends show the rail’s own curve in the grain. He oiled it and did nothing more; the dark of it is hands.' --event repair --id le-knob --title 'The knob from the ferry’s handrail' --as-told 'the Sunday after' --date 1962-08 --by tobias --part knob --source 'Pencilled inside the handle plate; told by the owner.' --certainty certain --keep-because 'It is the ferry’s own teak, and the hands that wore it smooth are in the story.' --must-stay knob --photo ph-knob
w story "$reel" 'Somebody lost the fourth screw of the tail plate and drove a steel wood screw into its pillar. It cut into the first turns of the thread, stood proud, and rusted. The crack in the plate runs from under its head.' --event repair --id le-screw --title 'The wrong screw' --date 1948/2014 --part wood-screw --source 'Seen here in 2014 and in 2026; nobody in the family knows of it.' --certainty certain
w story "$reel" 'The tongue of the click went missing. Its pin is worn, so it had long been used; its spring stayed.' --event loss --id le-tongue --title 'The click falls silent' --as-told 'before it came to me, I think' --date 1948/1979 --source 'Told at this bench by the second owner, 12 May 2014.' --certainty possible
w story "$reel" 'It lay in a biscuit tin, in flannel, with its line on. The flannel held a little damp on one side, and there the nickel of the tail ring has suffered most.' --event storage --id le-tin --title 'The biscuit tin' --as-told 'twenty years, and then eleven more' --date '1994~/2025-05' --part tin --part flannel --source 'Told by the owner; the stain in the flannel fits the ring.' --certainty certain
w story "$reel" 'It was in its place when the reel left this bench in 2014 and gone when it came back. It is not in the tin.' --event loss --id le-lock --title 'The lock screw of the handle nut' --date 2014-05/2026-03 --part lock-screw-old --source 'The bench’s day book, 23 May 2014.' --certainty certain
w story "$reel" 'For twenty-nine years the money of the Ellery Sound ferry passed through the hands of <person ref="gus">Augusta Merrow</person>. She was its purser: she sold the tickets, counted the float and shut the gate, and everybody called her <person ref="gus">Gus</person>. In 1948 she bought this reel new, out of her own wages, and had it engraved before it was ever wet: her name, the place, the year. Whatever lived beside water, she said, should carry its address.

The ferry lay at the landing from the last crossing at night to the first in the morning, and for those hours the landing was hers. She fished from its outer corner, over the piles, for cod in the cold months and pollack in the warm. She kept no count of them, having counted all day. What the family remembers is the sound. When she drew off line to lower a bait the click carried up the hill to the kitchen, and they knew that supper would be late. <note><emphasis>The reel agrees.</emphasis> The click’s pin is worn bright on both sides, though the tongue that did the sounding was gone before the reel first came to this bench.</note>

In August 1962 it fell. She had leaned the rod on the rail to take a rope; the ferry bumped, and the rod went over on to the stones of the slip. The arm of the handle bent a little and the black knob split in two. That same month her brother-in-law <person ref="tobias">Tobias Vane</person>, a joiner, was renewing the ferry’s handrail. From an offcut of the old teak, which thirty years of passengers had held on to, he turned <piece ref="knob">a new knob</piece>. She asked whether he meant to paint it black like the other. He said that he would not paint over the ferry. <note><emphasis>The reel agrees.</emphasis> Inside the handle plate somebody has pencilled “<person ref="tobias">T.V.</person> Aug 62”, and the arm is still two millimetres out of true.</note>

In 1979 she handed it to her nephew <person ref="edwin">Edwin</person> and told him to keep it wet. He did, from the same corner, until about 1994, when his work went inland. The reel went into a biscuit tin, in a piece of flannel. In the spring of 2014 he had it cleaned and greased at this bench, meaning to fish it that summer, and did not. <note><emphasis>The bench agrees.</emphasis> Its day book has that visit, and the three cork washers it cut then were in the reel when it came back. So was a crack in the tail plate, measured at 9 mm in 2014 and again in 2026.</note>

<person ref="edwin">Edwin</person>’s daughter <person ref="nell">Nell</person> had the tin from him in May 2025. She was three when it last went down to the water and does not remember it on a rod. What she knew was the knob: as a child she was allowed to take it out of its flannel and hold it, and asked each time whether it was true about the ferry. In March 2026 she put the tin on this bench and asked for two things, that it should fish from the landing again and that nobody should make it look new. Under the flannel lay the return half of a ferry ticket, not punched. It has gone back to where it lay. <note><emphasis>Not known.</emphasis> The ticket bears no date and no name. Whose crossing it was to be, nobody can say.</note>' --answer 'It fished from one ferry landing for forty-six years, was mended with a piece of the ferry, and is going back.' --told-by nell --approved --on 2026-06-12

# Whose each part is, and why
w grade "$reel" handle-plate --set 'the maker'"'"'s, certain' --by ines --on 2026-03-10 --because 'Moulded with the maker’s deep housing for the gears, in the same rubber as the other.'
w grade "$reel" handle-plate --set 'original, certain' --by ines --on 2026-03-10 --because 'It was on the reel by August 1962, and its six screw holes have taken one set of screws only.' --mark mk-pencil
w grade "$reel" handle-plate --set 'right pattern, certain' --by ines --on 2026-03-10 --because 'The same as the bench has seen on three other No. 40s.'
w grade "$reel" handle-ring --set 'the maker'"'"'s, certain' --by ines --on 2026-03-10 --because 'Pressed over the maker’s plate and not moved since; the plate shows a clean edge beneath.'
w grade "$reel" handle-ring --set 'original, certain' --by ines --on 2026-03-10 --because 'Bedded on its plate with the maker’s own cement.'
w grade "$reel" handle-ring --set 'right pattern, certain' --by ines --on 2026-03-10 --because 'Rolled edge, as on every No. 40 seen.'
w grade "$reel" handle-screws --set 'the maker'"'"'s, likely' --by ines --on 2026-03-10 --because 'One thread, one head, one slot width; no other maker’s pattern is known to match it.'
w grade "$reel" handle-screws --set 'original, likely' --by ines --on 2026-03-10 --because 'All six turned down to the same ring mark.'
w grade "$reel" handle-screws --set 'right pattern, certain' --by ines --on 2026-03-10 --because 'As the five that remain on the tail side.'
w grade "$reel" gear-cap --set 'the maker'"'"'s, certain' --by ines --on 2026-03-10 --because 'Stamped with the maker’s name.' --mark mk-cap
w grade "$reel" gear-cap --set 'original, likely' --by ines --on 2026-03-10 --because 'Its edge and the scar on the plate match.'
w grade "$reel" gear-cap --set 'right pattern, certain' --by ines --on 2026-03-10 --because 'Flat-topped, as in the years after the war.' --mark mk-cap
w grade "$reel" cap-screws --set 'the maker'"'"'s, likely' --by ines --on 2026-03-10 --because 'Slots and threads of the maker’s smaller screw.'
w grade "$reel" cap-screws --set 'original, likely' --by ines --on 2026-03-10 --because 'When the bench first drew them, in 2014, old lacquer lay whole across their slots.'
w grade "$reel" cap-screws --set 'right pattern, certain' --by ines --on 2026-03-10 --because 'As on the No. 30.'
w grade "$reel" lever --set 'the maker'"'"'s, certain' --by ines --on 2026-03-10 --because 'Waisted, with the maker’s riveted cam.'
w grade "$reel" lever --set 'original, likely' --by ines --on 2026-03-10 --because 'It has worn its own arc in the plate.'
w grade "$reel" lever --set 'right pattern, certain' --by ines --on 2026-03-10 --because 'As on every No. 40 seen.'
w grade "$reel" tail-plate --set 'the maker'"'"'s, certain' --by ines --on 2026-03-10 --because 'Maker, model and patent are moulded in it, and its mould number inside.' --mark mk-maker --mark mk-model --mark mk-number --mark mk-patent --mark mk-mould --photo ph-tail-found
w grade "$reel" tail-plate --set 'original, certain' --by ines --on 2026-03-10 --because 'Its holes, its ring and the wear round the click’s button agree; it came with the one serial number and no other.' --mark mk-mould --mark mk-serial
w grade "$reel" tail-plate --set 'right pattern, certain' --by ines --on 2026-03-10 --because 'Lettering of the third mould.' --mark mk-mould
w grade "$reel" tail-ring --set 'the maker'"'"'s, certain' --by ines --on 2026-03-10 --because 'Fellow of the ring on the handle side.'
w grade "$reel" tail-ring --set 'original, certain' --by ines --on 2026-03-10 --because 'Never off its plate.'
w grade "$reel" tail-ring --set 'right pattern, certain' --by ines --on 2026-03-10 --because 'Rolled edge, as its fellow.'
w grade "$reel" tail-screws --set 'the maker'"'"'s, likely' --by ines --on 2026-03-10 --because 'Same thread and head as the handle side’s six.'
w grade "$reel" tail-screws --set 'original, likely' --by ines --on 2026-03-10 --because 'Each has its own ring mark on the ring.'
w grade "$reel" tail-screws --set 'right pattern, certain' --by ines --on 2026-03-10 --because 'As on the handle side.'
w grade "$reel" wood-screw --set 'another maker'"'"'s, certain' --by ines --on 2026-03-10 --because 'A common countersunk wood screw with a coarse thread.' --photo ph-screw-old
w grade "$reel" wood-screw --set 'not original, certain' --by ines --on 2026-03-10 --because 'No reel was ever put together with one.'
w grade "$reel" wood-screw --set 'wrong pattern, certain' --by ines --on 2026-03-10 --because 'Wrong metal, wrong thread, wrong head.'
w grade "$reel" screw-new --set 'bench made, certain' --by ines --on 2026-05-14 --because 'Turned here on 14 May 2026; LB 26 under the head.' --mark mk-lb-screw
w grade "$reel" screw-new --set 'not original, certain' --by ines --on 2026-05-14 --because 'Made seventy-eight years later.'
w grade "$reel" screw-new --set 'right pattern, certain' --by ines --on 2026-05-14 --because 'Copied in head, slot and thread from its neighbour.'
w grade "$reel" click-button --set 'the maker'"'"'s, likely' --by ines --on 2026-03-10 --because 'Knurled by the same wheel as the bearing cap.'
w grade "$reel" click-button --set 'original, likely' --by ines --on 2026-03-10 --because 'The slot in the plate is worn to its neck.'
w grade "$reel" click-button --set 'right pattern, certain' --by ines --on 2026-03-10 --because 'As on the No. 30.'
w grade "$reel" tongue-new --set 'bench made, certain' --by ines --on 2026-05-12 --because 'Filed here on 12 May 2026; LB 26 on the hidden face.' --mark mk-lb-tongue --photo ph-tongue-new
w grade "$reel" tongue-new --set 'not original, certain' --by ines --on 2026-05-12 --because 'Made for the reel in 2026.'
w grade "$reel" tongue-new --set 'right pattern, likely' --by ines --on 2026-05-12 --because 'Shaped to the wear on the pin and to the tongue of the No. 30, which was broken.'
w grade "$reel" click-spring --set 'the maker'"'"'s, likely' --by ines --on 2026-03-10 --because 'Blued, with the maker’s square hook.'
w grade "$reel" click-spring --set 'original, possible' --by ines --on 2026-03-10 --because 'Nothing speaks against it.'
w grade "$reel" click-spring --set 'right pattern, certain' --by ines --on 2026-03-10 --because 'As in the No. 30.'
w grade "$reel" foot --set 'the maker'"'"'s, certain' --by ines --on 2026-03-10 --because 'Stamped with country and serial number.' --mark mk-country --mark mk-serial --photo ph-foot
w grade "$reel" foot --set 'original, certain' --by ines --on 2026-03-10 --because 'The serial number is here and nowhere else.' --mark mk-serial
w grade "$reel" foot --set 'right pattern, certain' --by ines --on 2026-03-10 --because 'Full length, never filed to fit a rod.' --photo ph-foot
w grade "$reel" foot-screws --set 'the maker'"'"'s, likely' --by ines --on 2026-03-10 --because 'Large flat heads, as on the No. 30.'
w grade "$reel" foot-screws --set 'original, likely' --by ines --on 2026-03-10 --because 'Bedded in old wax.'
w grade "$reel" foot-screws --set 'right pattern, certain' --by ines --on 2026-03-10 --because 'As on the No. 30.'
w grade "$reel" pillars --set 'the maker'"'"'s, certain' --by ines --on 2026-03-10 --because 'Turned, with the maker’s collared ends.'
w grade "$reel" pillars --set 'original, certain' --by ines --on 2026-03-10 --because 'All six are of one length to 0.05 mm, and of one wear.'
w grade "$reel" pillars --set 'right pattern, certain' --by ines --on 2026-03-10 --because 'Six, as on every No. 40 seen.'
w grade "$reel" bearing-cap --set 'the maker'"'"'s, certain' --by ines --on 2026-03-10 --because 'Sits on the maker’s thread, with the maker’s bush.'
w grade "$reel" bearing-cap --set 'original, likely' --by ines --on 2026-03-10 --because 'Its knurl has the same wear as the star.'
w grade "$reel" bearing-cap --set 'right pattern, certain' --by ines --on 2026-03-10 --because 'Forty-eight ridges to the knurl.'
w grade "$reel" bearing-cap-tail --set 'the maker'"'"'s, likely' --by ines --on 2026-03-10 --because 'The maker’s thread and bush.'
w grade "$reel" bearing-cap-tail --set 'originality not known' --by ines --on 2026-03-10 --because 'Its knurl is finer than any the bench has seen on a No. 40, sixty ridges, and its nickel is the brightest on the reel. It may be a late change or another Harroway’s cap.' --photo ph-tail-found
w grade "$reel" bearing-cap-tail --set 'pattern not known' --by ines --on 2026-03-10 --because 'Three others seen have fifty-two ridges.'
w grade "$reel" spool --set 'the maker'"'"'s, certain' --by ines --on 2026-03-10 --because 'Turned in one piece with the maker’s undercut flanges.'
w grade "$reel" spool --set 'original, likely' --by ines --on 2026-03-10 --because 'Runs in the plates without rubbing; no rub marks of any other.'
w grade "$reel" spool --set 'right pattern, certain' --by ines --on 2026-03-10 --because 'Diameter and width of the model.'
w grade "$reel" spindle --set 'the maker'"'"'s, likely' --by ines --on 2026-03-10 --because 'Pressed and pinned in the spool.'
w grade "$reel" spindle --set 'original, likely' --by ines --on 2026-03-10 --because 'Its pin has not been moved.'
w grade "$reel" spindle --set 'right pattern, certain' --by ines --on 2026-03-10 --because 'Diameter and length of the model.'
w grade "$reel" bridge --set 'the maker'"'"'s, certain' --by ines --on 2026-03-10 --because 'Milled, with the maker’s four posts.'
w grade "$reel" bridge --set 'original, likely' --by ines --on 2026-03-10 --because 'The dog’s post and the dog have worn together.'
w grade "$reel" bridge --set 'right pattern, certain' --by ines --on 2026-03-10 --because 'As in the No. 30.'
w grade "$reel" main-gear --set 'the maker'"'"'s, certain' --by ines --on 2026-03-10 --because 'Stamped 30, which is half of its sixty teeth, as the maker counted.' --mark mk-gear
w grade "$reel" main-gear --set 'original, likely' --by ines --on 2026-03-10 --because 'Its teeth and the old pinion’s are worn to each other.'
w grade "$reel" main-gear --set 'right pattern, certain' --by ines --on 2026-03-10 --because 'Sixty teeth.' --mark mk-gear
w grade "$reel" pinion-old --set 'the maker'"'"'s, certain' --by ines --on 2026-03-10 --because 'Stamped 7, which is half of its fourteen teeth.' --mark mk-pinion --photo ph-pinion-old
w grade "$reel" pinion-old --set 'original, likely' --by ines --on 2026-03-10 --because 'Worn to the main gear, tooth for tooth.' --photo ph-pinion-old
w grade "$reel" pinion-old --set 'right pattern, certain' --by ines --on 2026-03-10 --because 'Fourteen teeth.' --mark mk-pinion
w grade "$reel" pinion-new --set 'the maker'"'"'s, certain' --by ines --on 2026-04-22 --because 'Stamped 7, with the maker’s tooth form.' --mark mk-pinion-new --photo ph-pinion-new
w grade "$reel" pinion-new --set 'not original, certain' --by ines --on 2026-04-22 --because 'Taken out of the Skerry No. 30.'
w grade "$reel" pinion-new --set 'right pattern, certain' --by ines --on 2026-04-22 --because 'The maker used one pinion for both sizes.' --mark mk-pinion-new
w grade "$reel" yoke --set 'the maker'"'"'s, certain' --by ines --on 2026-03-10 --because 'Pressed, with the maker’s folded ears.'
w grade "$reel" yoke --set 'original, likely' --by ines --on 2026-03-10 --because 'Worn in the groove only, as one yoke with one pinion.'
w grade "$reel" yoke --set 'right pattern, certain' --by ines --on 2026-03-10 --because 'As in the No. 30.'
w grade "$reel" yoke-springs --set 'maker not known' --by ines --on 2026-03-10 --because 'Plain springs; any works wound such.'
w grade "$reel" yoke-springs --set 'originality not known' --by ines --on 2026-03-10 --because 'Of one length and one colour, which is all that can be said.'
w grade "$reel" yoke-springs --set 'right pattern, likely' --by ines --on 2026-03-10 --because 'They lift the yoke as they should.'
w grade "$reel" sleeve --set 'the maker'"'"'s, certain' --by ines --on 2026-03-10 --because 'Two flats and the maker’s thread for the star.'
w grade "$reel" sleeve --set 'original, likely' --by ines --on 2026-03-10 --because 'The star runs on it without shake.'
w grade "$reel" sleeve --set 'right pattern, certain' --by ines --on 2026-03-10 --because 'As in the No. 30.'
w grade "$reel" dog --set 'the maker'"'"'s, certain' --by ines --on 2026-03-10 --because 'Sawn and filed to the maker’s shape.'
w grade "$reel" dog --set 'original, likely' --by ines --on 2026-03-10 --because 'Its nose fits the wear on the ratchet.'
w grade "$reel" dog --set 'right pattern, certain' --by ines --on 2026-03-10 --because 'As in the No. 30.'
w grade "$reel" dog-spring-old --set 'the maker'"'"'s, likely' --by ines --on 2026-03-10 --because 'Hairpin of the maker’s wire, 0.64 mm.' --photo ph-spring-old
w grade "$reel" dog-spring-old --set 'original, likely' --by ines --on 2026-03-10 --because 'Whole, and noted as tired, in 2014.'
w grade "$reel" dog-spring-old --set 'right pattern, certain' --by ines --on 2026-03-10 --because 'As the one in the No. 30.'
w grade "$reel" dog-spring-part --set 'the maker'"'"'s, likely' --by ines --on 2026-03-10 --because 'The break fits.' --photo ph-spring-old
w grade "$reel" dog-spring-part --set 'original, likely' --by ines --on 2026-03-10 --because 'The break fits.'
w grade "$reel" dog-spring-part --set 'right pattern, certain' --by ines --on 2026-03-10 --because 'As the one in the No. 30.'
w grade "$reel" dog-spring-new --set 'the maker'"'"'s, certain' --by ines --on 2026-04-22 --because 'Taken whole out of a reel of the same maker.' --photo ph-spring-new
w grade "$reel" dog-spring-new --set 'not original, certain' --by ines --on 2026-04-22 --because 'Taken out of the Skerry No. 30.'
w grade "$reel" dog-spring-new --set 'right pattern, certain' --by ines --on 2026-04-22 --because 'Same wire, same coil, same legs.'
w grade "$reel" leather-washers --set 'maker not known' --by ines --on 2014-05-20 --because 'Cut by hand or by a worn punch.'
w grade "$reel" leather-washers --set 'originality not known' --by ines --on 2014-05-20 --because 'The maker used leather until about 1950, but leather wears out; these may be the second set or the third.'
w grade "$reel" leather-washers --set 'right pattern, likely' --by ines --on 2014-05-20 --because 'Of the size that the gear wants.'
w grade "$reel" cork-washers --set 'bench made, certain' --by ines --on 2014-05-20 --because 'Cut at this bench from 1.6 mm sheet.' --photo ph-washers-old
w grade "$reel" cork-washers --set 'not original, certain' --by ines --on 2014-05-20 --because 'Made in 2014.'
w grade "$reel" cork-washers --set 'wrong pattern, certain' --by ines --on 2014-05-20 --because 'The maker never used cork.'
w grade "$reel" red-washers --set 'another maker'"'"'s, certain' --by ines --on 2026-04-24 --because 'Bought new, punched to order.' --photo ph-washers-new
w grade "$reel" red-washers --set 'not original, certain' --by ines --on 2026-04-24 --because 'New material.'
w grade "$reel" red-washers --set 'wrong pattern, likely' --by ines --on 2026-04-24 --because 'Right in size once trimmed; Harroway’s leather was thicker and never red.'
w grade "$reel" metal-eared --set 'the maker'"'"'s, certain' --by ines --on 2026-03-10 --because 'Blanked, with the maker’s pair of ears.' --photo ph-drag-found
w grade "$reel" metal-eared --set 'original, likely' --by ines --on 2026-03-10 --because 'Their ears have worn the slots of this gear.'
w grade "$reel" metal-eared --set 'right pattern, certain' --by ines --on 2026-03-10 --because 'As in the No. 30.'
w grade "$reel" metal-keyed --set 'the maker'"'"'s, certain' --by ines --on 2026-03-10 --because 'Its hole has the two flats of the sleeve.' --photo ph-drag-found
w grade "$reel" metal-keyed --set 'original, likely' --by ines --on 2026-03-10 --because 'Blued on one face like the other two.'
w grade "$reel" metal-keyed --set 'right pattern, certain' --by ines --on 2026-03-10 --because 'As in the No. 30.'
w grade "$reel" tension-washer --set 'the maker'"'"'s, likely' --by ines --on 2026-03-10 --because 'Dished, of the maker’s thickness.'
w grade "$reel" tension-washer --set 'original, possible' --by ines --on 2026-03-10 --because 'Nothing speaks against it.'
w grade "$reel" tension-washer --set 'right pattern, certain' --by ines --on 2026-03-10 --because 'As in the No. 30.'
w grade "$reel" spacer --set 'the maker'"'"'s, likely' --by ines --on 2026-03-10 --because 'Turned, with the maker’s chamfer at one end only.'
w grade "$reel" spacer --set 'original, likely' --by ines --on 2026-03-10 --because 'Its end has printed a ring on the star.'
w grade "$reel" spacer --set 'right pattern, certain' --by ines --on 2026-03-10 --because 'As in the No. 30.'
w grade "$reel" star --set 'the maker'"'"'s, certain' --by ines --on 2026-03-10 --because 'Five arms with the maker’s blunt ends.'
w grade "$reel" star --set 'original, likely' --by ines --on 2026-03-10 --because 'The print of the spacer fits.'
w grade "$reel" star --set 'right pattern, certain' --by ines --on 2026-03-10 --because 'As on every No. 40 seen.'
w grade "$reel" handle-arm --set 'the maker'"'"'s, certain' --by ines --on 2026-03-10 --because 'Waisted, with the maker’s counterweight.'
w grade "$reel" handle-arm --set 'original, certain' --by ines --on 2026-03-10 --because 'Its bend belongs to the fall of 1962.' --told-by nell
w grade "$reel" handle-arm --set 'right pattern, certain' --by ines --on 2026-03-10 --because 'Length of the model.'
w grade "$reel" knob --set 'owner made, certain' --by ines --on 2026-03-10 --because 'Turned by a joiner of the family in August 1962.' --mark mk-pencil --photo ph-knob --told-by nell
w grade "$reel" knob --set 'not original, certain' --by ines --on 2026-03-10 --because 'The maker’s knob was black and split that August.' --told-by nell
w grade "$reel" knob --set 'wrong pattern, certain' --by ines --on 2026-03-10 --because 'Fuller than the maker’s, and of wood.'
w grade "$reel" knob-spindle --set 'the maker'"'"'s, likely' --by ines --on 2026-03-10 --because 'Riveted through the arm in the maker’s manner, and not disturbed.'
w grade "$reel" knob-spindle --set 'original, likely' --by ines --on 2026-03-10 --because 'The rivet is the first one.'
w grade "$reel" knob-spindle --set 'right pattern, certain' --by ines --on 2026-03-10 --because 'As on the No. 30.'
w grade "$reel" handle-nut --set 'the maker'"'"'s, likely' --by ines --on 2026-03-10 --because 'Drilled at the edge for the maker’s lock screw.'
w grade "$reel" handle-nut --set 'original, likely' --by ines --on 2026-03-10 --because 'The hole meets the thread in the arm.'
w grade "$reel" handle-nut --set 'right pattern, certain' --by ines --on 2026-03-10 --because 'As on the No. 30.'
w grade "$reel" lock-screw-old --set 'the maker'"'"'s, likely' --by ines --on 2014-05-12 --because 'Noted as the maker’s in 2014.'
w grade "$reel" lock-screw-old --set 'original, likely' --by ines --on 2014-05-12 --because 'It sat in its hole without play.'
w grade "$reel" lock-screw-old --set 'right pattern, certain' --by ines --on 2014-05-12 --because 'As on the No. 30.'
w grade "$reel" lock-screw-new --set 'another maker'"'"'s, certain' --by ines --on 2026-05-14 --because 'Taken from the Calder & Finch.' --photo ph-lock-new
w grade "$reel" lock-screw-new --set 'not original, certain' --by ines --on 2026-05-14 --because 'Another maker’s.'
w grade "$reel" lock-screw-new --set 'wrong pattern, likely' --by ines --on 2026-05-14 --because 'Cheese head, where the maker’s was round; the No. 30 had lost its own.'
w grade "$reel" tin --set 'not original, certain' --by ines --on 2014-05-12 --because 'It came into the family about 1994, with biscuits.' --told-by edwin
w grade "$reel" flannel --set 'not original, certain' --by ines --on 2026-03-03 --because 'Cut from a shirt.' --told-by nell
w grade "$reel" ticket --set 'originality not known' --by ines --on 2026-03-05 --because 'No date, no name, not punched.'
w grade "$reel" old-line --set 'originality not known' --by ines --on 2026-03-10 --because 'Twisted linen, rotten near the spool; it may be her last line or his first.'
w grade "$reel" new-line --set 'another maker'"'"'s, certain' --by ines --on 2026-06-12 --because 'Bought for the reel.'
w grade "$reel" new-line --set 'not original, certain' --by ines --on 2026-06-12 --because 'Bought in 2026.'

# As found
w part "$reel" lock-screw-old --known --until 2014/2025 --now lost --since 2026-03-03 --now-note 'Lost between May 2014 and March 2026.'
w grade "$reel" handle-plate --set 'fitted, untouched 100' --by ines --note 'Olive-brown, black under the star.' --on 2026-03-05
w grade "$reel" handle-ring --set 'fitted, untouched 82, worn through 18, corroded 0.5, defects 3' --by ines --on 2026-03-05
w grade "$reel" handle-screws --set 'fitted, untouched 90, worn through 10' --by ines --on 2026-03-05
w grade "$reel" gear-cap --set 'fitted, untouched 65, polished 35' --by ines --note 'Rubbed across the name before 2014.' --on 2026-03-05
w grade "$reel" cap-screws spindle bridge yoke yoke-springs sleeve dog metal-eared metal-keyed tension-washer spacer knob-spindle --set 'fitted, cleaned 100' --by ines --on 2026-03-05
w grade "$reel" lever --set 'fitted, untouched 78, worn through 22, defects 4' --by ines --on 2026-03-05
w grade "$reel" tail-plate --set 'fitted, untouched 100' --by ines --note 'Crack at the fourth screw, 9 mm.' --photo ph-tail-found --on 2026-03-05
w grade "$reel" tail-ring --set 'fitted, untouched 52, worn through 48, corroded 2.0, defects 9' --by ines --note 'Bare along the upper edge; verdigris at two pillars.' --photo ph-plating --on 2026-03-05
w grade "$reel" tail-screws --set 'fitted, untouched 84, worn through 16, corroded 0.25' --by ines --on 2026-03-05
w grade "$reel" wood-screw --set 'fitted, untouched 40, worn through 60, corroded 30, defects 60' --by ines --photo ph-screw-old --on 2026-03-05
w grade "$reel" click-button --set 'fitted, untouched 88, worn through 12' --by ines --on 2026-03-05
w grade "$reel" click-spring --set 'fitted, untouched 100' --by ines --on 2026-03-05
w grade "$reel" foot --set 'fitted, untouched 79, worn through 21, corroded 0.5, defects 5' --by ines --note 'Engraving clear; nickel worn at both ends.' --photo ph-foot --on 2026-03-05
w grade "$reel" foot-screws --set 'fitted, untouched 70, worn through 30, defects 8' --by ines --note 'Slots a little spread.' --on 2026-03-05
w grade "$reel" pillars --set 'fitted, untouched 60, worn through 40, corroded 1.0, defects 8' --by ines --on 2026-03-05
w grade "$reel" bearing-cap --set 'fitted, untouched 92, worn through 8' --by ines --on 2026-03-05
w grade "$reel" bearing-cap-tail --set 'fitted, untouched 97, worn through 3' --by ines --on 2026-03-05
w grade "$reel" spool --set 'fitted, untouched 91, worn through 9, defects 3' --by ines --on 2026-03-05
w grade "$reel" main-gear --set 'fitted, cleaned 100' --by ines --note 'Under brown grease.' --photo ph-grease-found --on 2026-03-05
w grade "$reel" pinion-old --set 'fitted, cleaned 62, worn through 38' --by ines --note 'Four teeth hooked.' --photo ph-pinion-old --on 2026-03-05
w grade "$reel" dog-spring-old --set 'fitted, untouched 100' --by ines --note Broken. --on 2026-03-05
w grade "$reel" dog-spring-part --set loose --by ines --note 'In the grease.' --on 2026-03-05
w grade "$reel" cork-washers --set fitted --by ines --note 'Compressed, crumbling, one with a piece gone.' --photo ph-drag-found --on 2026-03-05
w grade "$reel" star --set 'fitted, untouched 76, worn through 24, defects 4' --by ines --on 2026-03-05
w grade "$reel" handle-arm --set 'fitted, untouched 71, worn through 29, defects 5' --by ines --note 'Bent 2 mm towards the star.' --on 2026-03-05
w grade "$reel" knob --set 'fitted, untouched 100' --by ines --note 'Sound; no check in the wood.' --photo ph-knob --on 2026-03-05
w grade "$reel" handle-nut --set 'fitted, untouched 55, worn through 45' --by ines --note 'Corners rounded.' --on 2026-03-05
w grade "$reel" lock-screw-old --set missing --by ines --on 2026-03-05
w grade "$reel" --place pl-click-tongue --set empty --on 2026-03-05
w grade "$reel" --place pl-lock-screw --set empty --on 2026-03-05
w test "$reel" 'Free spool, one measured flick' --before '6 s' --verdict in-part --on 2026-03-05
w test "$reel" 'Drag at the line' --before '0 to 7 N' --words slips --verdict in-part --on 2026-03-05
w test "$reel" 'Pull to start, to that to run' --before '2.6 times' --verdict in-part --on 2026-03-05
w test "$reel" 'Dog holds the handle' --before '0.4 N·m' --words slips --verdict not-working --on 2026-03-05
w test "$reel" 'Spool end float' --before '0.55 mm' --verdict in-part --on 2026-03-05
w test "$reel" 'Slack at the handle' --before '19 °' --verdict in-part --on 2026-03-05
w test "$reel" Click --before silent --verdict not-working --on 2026-03-05
w test "$reel" 'Line in per turn' --before '540 mm' --words jumps --verdict in-part --on 2026-03-05
w test "$reel" 'Steady pull, one minute' --unit N --not-safe --load-limit '5 N' --on 2026-03-05
w advise "$reel" --set make-it-fish --because 'She wants to fish it where it was fished, and everything that keeps it from fishing can be put right with pieces that lift out again. The crack is the one stop: it allows a light drag and a watchful eye, and no more. To rebuild it would cost it the surfaces that she asked us to leave alone.' --cost 'keep-as-found: 0.00 GBP: Loses nothing; the wrong screw goes on working at the crack.' --cost 'clean-for-show: 80.00 GBP to 110.00 GBP: Loses nothing that matters; the reel stays silent and slips.' --cost 'make-it-fish: 260.00 GBP to 340.00 GBP: Two of the maker’s own pieces go into bags and can come back out of them.' --cost 'rebuild-to-fish: 480.00 GBP to 620.00 GBP: A new tail plate and new nickel: a sounder reel and a lesser one.' --on 2026-03-11
w advise "$reel" --decide make-it-fish --decided-by nell --why '“It was never a thing for a shelf. The shelf is for the winter.”' --on 2026-03-11

# Taken apart
w strip "$reel" 'Photograph the reel from six sides. Turn the star back until it is quite loose.' --orientation 'Free-spool lever towards the foot.' --on 2026-03-05
w strip "$reel" 'Turn off the handle nut. Nothing locks it: the screw is missing.' --off handle-nut --orientation 'Drilled edge outward.' --tool '11 mm ring spanner, jaws taped' --on 2026-03-05
w strip "$reel" 'Draw the handle off the flats, arm, spindle and knob together. The rivet of the spindle is not disturbed.' --off handle-arm --off knob-spindle --off knob --orientation 'Counterweight up when the knob is down.' --on 2026-03-05
w strip "$reel" 'Unscrew the star.' --off star --orientation 'Hollow side to the plate; eight and a half turns to come off.' --on 2026-03-05
w strip "$reel" 'Lift off the spacer and the tension washer.' --off spacer --off tension-washer --orientation 'Chamfer of the spacer outward; hollow of the washer to the gear.' --on 2026-03-05
w strip "$reel" 'Draw the four screws of the gear cap, a quarter-turn each in turn, and lift the cap.' --off cap-screws --off gear-cap --orientation 'Name upright when the foot is down.' --tool '2.5 mm hollow-ground driver' --on 2026-03-05
w strip "$reel" 'Pick out the drag washers one by one with a wooden point and lay them down in their order.' --off metal-eared --off cork-washers --off metal-keyed --orientation 'From the gear outward: eared, cork, flatted, cork, eared, cork. Ears in the gear’s slots.' --tool 'boxwood point' --photo ph-drag-found --on 2026-03-05
w strip "$reel" 'Lift out the main gear. Photograph the grease as it lies.' --off main-gear --orientation 'Stamped face outward.' --photo ph-grease-found --on 2026-03-05
w strip "$reel" 'Press the yoke down, slide the pinion out of it, let the yoke rise slowly under the thumb, then lift it and its two springs off their posts. Nothing here is to be hurried.' --off pinion-old --off yoke --off yoke-springs --orientation 'Groove of the pinion to the plate. The springs are alike and go either way up.' --spring --caution 'Yoke springs: Two coils under load. Eye protection from here on.' --on 2026-03-05
w strip "$reel" 'Lift out the bridge, which the four screws of the cap had held, with the sleeve riveted in it and the dog on its post.' --off bridge --off sleeve --orientation 'Dog’s post towards the foot.' --spring --caution 'Dog spring: Broken as it is, its two parts can fly when the bridge comes away. A cloth over it, glasses on.' --on 2026-03-05
w strip "$reel" 'Search the grease under the bridge with a magnet in a paper sleeve. The missing part of the dog spring was in it.' --found dog-spring-part --on 2026-03-05
w strip "$reel" 'Unhook what is left of the dog spring, holding it down with a stick of wood as if it were whole, then lift the dog from its post.' --off dog-spring-old --off dog --orientation 'Nose of the dog to the ratchet, burr up.' --tool 'hook of 0.8 mm wire' --spring --caution 'Dog spring: Even broken, a hairpin can jump.' --on 2026-03-05
w strip "$reel" 'Turn the free-spool lever to the middle and draw it with its cam.' --off lever --orientation 'Long end to the rim.' --on 2026-03-05
w strip "$reel" 'Loosen the wood screw at the fourth hole of the tail plate, an eighth of a turn at a time, watching the crack through the glass. It moved at the fifth.' --off wood-screw --tool '4 mm driver, ground to the slot' --caution 'Hard rubber: It is brittle and gives no warning. No heat to free a screw: it would soften, brown and give off sulphur.' --on 2026-03-05
w strip "$reel" 'Draw the other five tail-plate screws and lay them down in order: one, two, three, five, six, counted clockwise from the upper left.' --off tail-screws --tool '3 mm hollow-ground driver' --on 2026-03-05
w strip "$reel" 'Unscrew both bearing caps.' --off bearing-cap --off bearing-cap-tail --orientation 'The larger is the tail side’s.' --tool 'fingers, through leather' --on 2026-03-05
w strip "$reel" 'Lift the tail plate with its ring straight off the pillars. The ring stays on the plate; it has never been off.' --off tail-plate --off tail-ring --orientation 'Patent number towards the foot.' --on 2026-03-05
w strip "$reel" 'Slide out the spool, spindle and all.' --off spool --off spindle --orientation 'Longer end of the spindle to the gears.' --on 2026-03-05
w strip "$reel" 'Wind the old line off on to a card, counting turns.' --off old-line --on 2026-03-05
w strip "$reel" 'Hold the click spring down and unhook it, then lift the button from its slot. The pin for the tongue stays in the plate, worn as it is.' --off click-spring --off click-button --orientation 'Hook of the spring to the rim.' --tool 'hook of 0.8 mm wire' --spring --caution 'Click spring: Hooked under load. Glasses on still.' --on 2026-03-05
w strip "$reel" 'Draw the six handle-plate screws and lift the plate with its ring from the pillars.' --off handle-screws --off handle-plate --off handle-ring --orientation 'Pencilled note inside: not to be wiped.' --tool '3 mm hollow-ground driver' --on 2026-03-05
w strip "$reel" 'Draw the two foot screws and lift off the foot.' --off foot-screws --off foot --orientation 'Serial number to the tail side.' --tool '5 mm hollow-ground driver' --on 2026-03-05
w strip "$reel" 'Number the six pillars on paper tags, clockwise like the screws, and lay them beside the tray with the plates and the foot. Photograph the tray.' --off pillars --orientation 'The fourth has the spoiled thread, at its tail end.' --photo ph-tray --on 2026-03-05
w tray "$reel" --found-loose leather-washers --on 2026-03-05
w tray "$reel" --found-loose tin --on 2026-03-05
w tray "$reel" --found-loose flannel --on 2026-03-05
w tray "$reel" --found-loose ticket --on 2026-03-05

# Cleaned
w clean "$reel" handle-screws tail-screws gear-cap cap-screws lever foot foot-screws pillars bearing-cap bearing-cap-tail click-button star handle-arm handle-nut spool --method 'lukewarm bath with a mild dish detergent, soft brush, rinse, dried at once' --material 'nickel-plated brass' --minutes 15 --what 'The nickelled metal had fifteen minutes in a lukewarm bath with a little dish detergent, then a soft brush, a rinse and a dry cloth. No polish, no wire wool, no ammonia. What lay in the engraving was lifted out with a wooden point.' --caution 'Bath: Gloves. Dry bare steel straight away and oil it, or it rusts within minutes.' --on 2026-03-05
w clean "$reel" handle-plate tail-plate handle-ring tail-ring --method 'damp cloth, dried at once' --material 'hard rubber' --what 'The hard rubber, with the two rings that have never left it, was wiped with a damp cloth and dried at once. The pencilled note was covered first, and the paint in the letters let alone. Verdigris beside two pillars was eased off the tail ring with a pointed stick.' --caution 'Hard rubber: Hot water and light turn it brown; hot, it gives off sulphur that harms. No bath, no buffing wheel.' --on 2026-03-05
w clean "$reel" main-gear bridge yoke sleeve dog spindle knob-spindle yoke-springs click-spring metal-eared metal-keyed tension-washer --method 'white spirit by brush, dried' --material 'bronze, brass and steel' --minutes 20 --what 'Our old grease was softened with white spirit and brushed out of the gears tooth by tooth, in the open doorway. The steel was cleaned in the same way, wiped dry and given a film of light oil, except for the washers of the drag, which are meant to stay dry. Springs were left to drain; no air line was used.' --caution 'Solvent: Flammable. Fresh air, gloves, no flame, rags to a lidded bin, never an ultrasonic bath. No compressed air on springs.' --on 2026-03-05
w clean "$reel" knob --method 'soft dry brush' --material teak --what 'The knob had a soft dry brush and nothing else.' --on 2026-03-05

# Put in
w fit "$reel" pinion-new --known --place pl-pinion --instead-of pinion-old --label 'bag 2' --why 'Four of its fourteen teeth were worn to hooks; the gears jumped once in three turns.' --adaptation 'Not at all. The maker used one pinion in both sizes; it was cleaned and runs as it came.' --bore 4.02 --outside 10.05 --depth 9.5 --seat-note 'Bore on the spindle with 0.03 mm to spare.' --way-back '100: Fully. The old pinion drops straight in, and will jump again.' --photo ph-pinion-new --old-photo ph-pinion-old --on 2026-04-22
w fit "$reel" red-washers --known --place pl-soft-washers --instead-of cork-washers --label 'bag 3' --why 'Our own cork of 2014 had crumbled; the drag slipped and grabbed by turns.' --adaptation 'Trimmed 0.4 mm on the outside, from 23.8 to 23.4 mm, so that they turn freely in the gear. Holes and thickness as bought.' --bore 7.0 --outside 23.7 --depth 8.0 --seat-note 'The recess of the main gear, over the sleeve; room outside 0.10 to 0.50 mm, inside 0.10 to 0.50 mm, with calipers ±0.1 mm.' --way-back '100: Fully. They lift out and leave no trace.' --photo ph-washers-new --old-photo ph-washers-old --on 2026-04-24
w fit "$reel" dog-spring-new --known --place pl-dog-spring --instead-of dog-spring-old --label 'bag 4' --why 'Broken in its coil; the dog fell away and the handle spun back under load.' --adaptation 'Not at all.' --seat-note 'Coil over the bridge’s post, short leg behind the dog, long leg against the wall.' --way-back '100: Fully; but the old spring, in its two parts, can do no work.' --photo ph-spring-new --old-photo ph-spring-old --on 2026-04-22
w fit "$reel" tongue-new --known --place pl-click-tongue --why 'Missing when it came in 2014 and still missing in 2026; the click was silent.' --adaptation 'Filed from 1.2 mm nickel silver, hardened by hammering, and hung on the maker’s own pin.' --bore 2.6 --seat-note 'On the worn pin, 2.5 mm, which was left as it is.' --way-back '100: Fully. Lift it off and the reel is silent again.' --photo ph-tongue-new --on 2026-05-12
w fit "$reel" screw-new --known --place pl-tail-screw-4 --instead-of wood-screw --label 'bag 5' --why 'A rusted wood screw stood in the hole and bore on the crack.' --adaptation 'Copied from its neighbour and left 1.5 mm longer, to reach the four sound turns below the spoiled ones. No hole was bored and no thread was cut.' --bore 1.5 --depth 7.2 --seat-note 'In the pillar; core of the thread.' --way-back '90: The wood screw can go back; the damage done before 2014 to the pillar’s first turns remains.' --photo ph-screw-new --old-photo ph-screw-old --on 2026-05-14
w fit "$reel" lock-screw-new --known --place pl-lock-screw --why 'Missing when it came; the handle nut worked loose as it was wound.' --adaptation 'Shortened by 0.6 mm so that its head lies below the edge of the nut.' --bore 1.36 --depth 4.0 --way-back '100: Fully. It unscrews.' --photo ph-lock-new --on 2026-05-14
w tray "$reel" --label 'bag 4' --on 2026-04-22 --bag dog-spring-part
w tray "$reel" --label 'bag 6' --on 2026-03-10 --bag old-line
w tray "$reel" --label 'bag 1' --on 2026-03-05 --bag leather-washers
w tray "$reel" --on 2026-06-19 --to-owner tin
w tray "$reel" --on 2026-06-19 --to-owner flannel
w tray "$reel" --on 2026-06-19 --to-owner ticket

# Worked on, put back, and proved
w work "$reel" 'The seats were measured, and two broken reels were found whose parts would fit them.' --by ines --on 2026-03-11 --until 2026-04-02 --hours 2.5
w work "$reel" 'The pinion and the dog spring of the No. 30 went in. The gears were turned two hundred times with marking blue and bore along the whole tooth.' --part pinion-new --part dog-spring-new --by ines --on 2026-04-22 --hours 1.5 --caution 'Hairpin: Wound as it goes in: eye protection, and a stick of wood over it.'
w work "$reel" 'Three new leather washers were trimmed on a wooden arbor, wet, with a blade, until each turned freely in the gear and none could be felt to bind. What came off them was bagged damp.' --part red-washers --by ines --on 2026-04-24 --hours 1.0 --caution 'Cutting: New material, its supplier named. Cut wet, mask on; no old washer is cut.'
w work "$reel" 'The click’s tongue was filed from sheet and taken down, a stroke at a time, until it sounded alike in both directions.' --part tongue-new --by ines --on 2026-05-12 --hours 2.0 --parts-cost '2.40 GBP'
w work "$reel" 'The fourth screw was turned to the pattern of its neighbour, slotted, and hung in the sound turns of the old thread. The lock screw of the handle nut was shortened and fitted.' --part screw-new --part lock-screw-new --by ines --on 2026-05-14 --hours 2.0 --parts-cost '1.80 GBP' --caution 'Lathe: Guard down, glasses on, no key in the chuck.'
w work "$reel" 'It was put together with grease on gears and dog, a drop of light oil at each bearing and at the spindle of the knob, and the drag dry.' --by ines --on 2026-06-02 --hours 3.0
w work "$reel" 'A hundred metres of new line were wound on, as far as the old line had reached.' --part new-line --by ines --on 2026-06-12 --hours 0.5 --parts-cost '14.50 GBP'
w tray "$reel" --refit-all --on 2026-06-12
w grade "$reel" handle-plate cap-screws click-spring spindle bridge pinion-new yoke yoke-springs sleeve dog dog-spring-new metal-eared metal-keyed tension-washer spacer knob knob-spindle --set 'fitted, cleaned 100' --left --by ines --on 2026-06-12
w grade "$reel" handle-ring --set 'fitted, cleaned 82, worn through 18, corroded 0.5, defects 2' --left --by ines --on 2026-06-12
w grade "$reel" handle-screws --set 'fitted, cleaned 90, worn through 10' --left --by ines --on 2026-06-12
w grade "$reel" gear-cap --set 'fitted, cleaned 65, polished 35' --left --by ines --on 2026-06-12
w grade "$reel" lever --set 'fitted, cleaned 78, worn through 22, defects 3' --left --by ines --on 2026-06-12
w grade "$reel" tail-plate --set 'fitted, cleaned 100' --left --by ines --photo ph-tail-left --on 2026-06-12
w grade "$reel" tail-ring --set 'fitted, cleaned 52, worn through 48, corroded 2.0, defects 6' --left --by ines --note 'Verdigris lifted. The nickel that was gone is gone.' --on 2026-06-12
w grade "$reel" tail-screws --set 'fitted, cleaned 84, worn through 16, corroded 0.25' --left --by ines --on 2026-06-12
w grade "$reel" screw-new tongue-new lock-screw-new --set fitted --left --by ines --on 2026-06-12
w grade "$reel" click-button --set 'fitted, cleaned 88, worn through 12' --left --by ines --on 2026-06-12
w grade "$reel" foot --set 'fitted, cleaned 79, worn through 21, corroded 0.5, defects 4' --left --by ines --on 2026-06-12
w grade "$reel" foot-screws --set 'fitted, cleaned 70, worn through 30, defects 6' --left --by ines --on 2026-06-12
w grade "$reel" pillars --set 'fitted, cleaned 60, worn through 40, corroded 1.0, defects 5' --left --by ines --on 2026-06-12
w grade "$reel" bearing-cap --set 'fitted, cleaned 92, worn through 8' --left --by ines --on 2026-06-12
w grade "$reel" bearing-cap-tail --set 'fitted, cleaned 97, worn through 3' --left --by ines --on 2026-06-12
w grade "$reel" spool --set 'fitted, cleaned 91, worn through 9, defects 2' --left --by ines --on 2026-06-12
w grade "$reel" main-gear --set 'fitted, cleaned 100' --left --by ines --photo ph-gears-left --on 2026-06-12
w grade "$reel" red-washers --set fitted --left --by ines --photo ph-drag-left --on 2026-06-12
w grade "$reel" star --set 'fitted, cleaned 76, worn through 24, defects 3' --left --by ines --on 2026-06-12
w grade "$reel" handle-arm --set 'fitted, cleaned 71, worn through 29, defects 4' --left --by ines --on 2026-06-12
w grade "$reel" handle-nut --set 'fitted, cleaned 55, worn through 45' --left --by ines --on 2026-06-12
w grade "$reel" --place pl-click-tongue --set filled --left --note 'Empty in 2014 too.' --on 2026-06-12
w grade "$reel" --place pl-lock-screw --set filled --left --on 2026-06-12
w test "$reel" 'Free spool, one measured flick' --after '34 s' --verdict as-made --on 2026-06-12 --note 'Line on the spool to 40 mm across, both times; 18 °C in March, 20 °C in June.'
w test "$reel" 'Drag at the line' --after '4 to 30 N' --verdict as-made --on 2026-06-12 --note 'From loose up to 30 N, the limit set first; rod and hook off, one spring balance. As found it slipped and then grabbed.'
w test "$reel" 'Pull to start, to that to run' --after '1.1 times' --verdict as-made --on 2026-06-12 --note 'A ratio: 1 would be a drag that never sticks.'
w test "$reel" 'Dog holds the handle' --after '3.0 N·m' --words held --verdict as-made --on 2026-06-12 --note 'The drag at its limit asks 2.6 of it.'
w test "$reel" 'Spool end float' --after '0.12 mm' --verdict as-made --on 2026-06-12
w test "$reel" 'Slack at the handle' --after '4 °' --verdict as-made --on 2026-06-12
w test "$reel" Click --after 'both ways' --verdict as-made --on 2026-06-12 --note 'As left it sounds alike in both directions.'
w test "$reel" 'Line in per turn' --after '540 mm' --verdict as-made --on 2026-06-12 --note 'Spool at 40 mm across, sixty teeth to fourteen. As found the gears jumped every third turn.'
w test "$reel" 'Steady pull, one minute' --after '20 N' --words held --verdict with-care --on 2026-06-12 --note 'The crack was watched through the glass and did not move. Not to be asked of it often.'
w grade "$reel" dog-spring-old --fault broken --fault-name 'broken dog spring' --found-severity unsafe --left-severity put-right --what 'The dog fell away from its ratchet, and under a fish the handle would have spun backwards.' --on 2026-06-12
w grade "$reel" tail-plate --fault crack --fault-name 'hairline crack at the fourth tail-plate screw' --size 9 --found-severity weakening --left-severity weakening --what 'It runs inward from under the ring, clear of the bearing. Measured under the glass at 9 mm in 2014, and at 9 mm in March and in June 2026.' --stays-because 'Glue would show, would not hold under load, and would bar the way to a better cure. The wrong screw no longer bears on it.' --photo ph-tail-found --on 2026-06-12
w grade "$reel" pinion-old --fault worn-teeth --fault-name 'hooked teeth on the pinion' --found-severity weakening --left-severity put-right --what 'Four of the fourteen are hooked, along the 6 mm where the main gear runs.' --photo ph-pinion-old --on 2026-06-12
w grade "$reel" pillars --fault stripped-thread --fault-name 'spoiled thread in the fourth pillar' --size 2 --found-severity weakening --left-severity blemish --what 'The wood screw had cut away the first 2 mm. Below it four turns are sound.' --stays-because 'The new screw reaches the sound turns. Cutting a larger thread would have been a new hole by another name.' --on 2026-06-12
w grade "$reel" tail-ring --fault worn-plating --fault-name 'nickel worn to the brass' --found-severity blemish --left-severity blemish --what 'On the tail ring, the handle-side ring, all six pillars and the ends of the foot, where hands, line, the rod’s bands and a damp flannel have been.' --stays-because 'New nickel would be a new surface, and it would need the old one taken off first.' --photo ph-plating --on 2026-06-12
w grade "$reel" --fault fading --fault-name 'hard rubber faded to olive-brown' --found-severity blemish --left-severity blemish --what 'Both plates, by light and years; black still under the star.' --stays-because 'It could be dyed or rubbed black; either would be paint over a fact.' --on 2026-06-12
w grade "$reel" handle-arm --fault bend --fault-name 'handle arm bent towards the star' --size 2 --found-severity blemish --left-severity blemish --what 'It clears the star by 3 mm.' --stays-because 'It came from the fall of 1962 and does no harm. Bending it back would crack the nickel.' --on 2026-06-12
w grade "$reel" cork-washers --flag hazard --flag-name 'asbestos-type washers' --what 'The old cork washers are not tested: no eye can tell what holds such a washer together. They were lifted out whole and damp and lie bagged and labelled. Treat any old brake or drag washer as the dangerous kind until a licensed laboratory says otherwise; local rules come first.' --on 2026-06-12
w grade "$reel" handle-plate tail-plate --flag hazard --flag-name 'hard rubber and heat' --what 'Hard rubber gives off sulphur when it is hot. Keep it from flame, hot water, ovens and buffing wheels.' --on 2026-06-12
w grade "$reel" tail-plate --flag hazard --flag-name 'lead in old paint' --what 'The white in the letters may hold lead; not tested. It was wiped and not scraped.' --on 2026-06-12
w grade "$reel" knob --flag legal --flag-name 'ivory, shell and horn' --what 'None seen. The knob is teak from a ferry that is gone. Nothing here is known to need a paper to be sold or to cross a border; rules change, so ask before it does.' --on 2026-06-12
w measure "$reel" --washer 'metal-eared: to-gear 7.4 23.6 0.9' --washer 'red-washers: free 7.3 23.4 1.3' --washer 'metal-keyed: to-sleeve 7.1 23.2 0.9' --washer 'red-washers: free 7.3 23.4 1.3' --washer 'metal-eared: to-gear 7.4 23.6 0.9' --washer 'red-washers: free 7.3 23.4 1.3' --washer 'tension-washer: to-sleeve 7.1 16.6 0.6' --dry --setting '12 N' --spool-full '40.0 mm' --spool-empty '20.0 mm' --line-strength '130 N' --on 2026-06-12
w grade "$reel" --findings-note 'The hard rubber has gone from black to olive-brown, as it does in light, and is black still where the star kept the sun off. The nickel is worn to the brass where hands, line and the rod’s bands have been: on both rings, on the pillars, at the ends of the foot. Inside, our own grease of 2014 had turned brown round the gears and was full of crumbs of our own cork. The gears jumped once in three turns, the drag slipped and then grabbed, and the click was silent. The screw that locks the handle nut had gone, so that the handle worked loose as it was wound. The teak knob was sound.' --on 2026-06-12

# Hand-back
w handback "$reel" --on 2026-06-19 --to nell --bag 'bag 1' --bag 'bag 2' --bag 'bag 3' --bag 'bag 4' --bag 'bag 5' --bag 'bag 6' --note 'Six bags, in the tin with the flannel and the ticket.' --not-put-right 'The maker’s black knob, click tongue, lock screw and fourth tail-plate screw are lost, and nobody has them to give back.' --not-put-right 'Whether the tail-side bearing cap and the two yoke springs are original we could not tell, and have not guessed.' --not-put-right 'Who drove the wood screw, and when, is not known.' --drag '8 to 14 N' --line 'braided polyester, 0.60 mm, 100 m' --fish 'On a spring balance that drag is 0.8 to 1.4 kg.' --fish 'Slacken the star after every day, or the washers take a set.' --fish 'Look at the crack through a glass before each season. It is 9 mm long.' --keep 'Wipe it with a cloth wrung out in fresh water and dry it. Do not hold it under a tap.' --keep 'Keep it out of the sun, which browns hard rubber, and out of the flannel, which held damp. The ticket may have the flannel.' --keep 'No metal polish, no wire wool. One drop of light oil at each bearing cap and at the spindle of the knob, every tenth day’s fishing.' --caution 'The crack: If it is longer than 12 mm, or can be felt with a nail, do not fish the reel until the plate has been seen.' --caution 'The line: No nylon monofilament: wound on tight it shrinks and can burst an old spool.' --caution 'The handle: Under a fish keep fingers clear of the arm. The dog was tried to 3 N·m, and to no more.' --next-service 2029 --review-by 2036 --summary 'Taken apart, cleaned and put back to work. Eight parts, in six entries, were put in that were not on the reel when it was new; every old one that came with it is in a bag.'
w part "$reel" wood-screw --known --now bagged --label 'bag 5' --since 2026-05-14
w part "$reel" pinion-old --known --now bagged --label 'bag 2' --since 2026-04-22
w part "$reel" dog-spring-old --known --now bagged --label 'bag 4' --since 2026-04-22
w part "$reel" dog-spring-part --known --now bagged --label 'bag 4' --since 2026-04-22
w part "$reel" leather-washers --known --now bagged --label 'bag 1' --since 2014-05-23 --now-note 'Of the maker’s pattern, perhaps not the first set; taken out in 2014 and kept. Hard, oil-black, one split.'
w part "$reel" cork-washers --known --now bagged --label 'bag 3' --since 2026-04-24 --now-note 'One with a piece gone from its edge; the crumbs were thrown away.'
w part "$reel" tin --known --now with-reel --since 2026-06-19
w part "$reel" flannel --known --now with-reel --since 2026-06-19 --now-note 'Washed and dried; the old stain shows still.'
w part "$reel" ticket --known --now with-reel --since 2026-06-19 --now-note 'Under the flannel, where it lay.'
w part "$reel" old-line --known --now bagged --label 'bag 6' --since 2026-03-10 --now-note 'Wound on a card.'
w part "$reel" new-line --known --now with-reel --since 2026-06-19 --now-note 'On the spool.'

# What such reels were sold for
w sales for "$reel" --purpose insurance --effective 2026-06-19 --basis 'what a willing buyer pays a willing seller, neither in a hurry' --currency GBP --note 'No sale of a reel with a named owner’s engraving is known to the bench. What the name adds or takes away is not in any of these prices.'
w sales add "$reel" --id sa-1 --date 2024-04-13 --price '128.00 GBP' --included 'Skerry No. 40, reel only' --kind auction --with-premium --state '“good working order, some wear to plating”' --originality 90 --source 'printed list of the spring sale, Ternwick Corn Hall, lot 212, with the prices pencilled in'
w sales add "$reel" --id sa-2 --date 2024-11-09 --price '96.00 GBP' --included 'Skerry No. 40, reel only' --kind auction --with-premium --state '“stiff; replaced knob; crack to one plate”' --originality 80 --source 'printed list of the autumn sale, Ternwick Corn Hall, lot 87'
w sales add "$reel" --id sa-3 --date 2025-03-02 --price '145.00 GBP' --included 'Skerry No. 40 with spanner' --kind dealer --state '“cleaned and serviced, fishes well”' --originality 95 --source 'the dealer’s dated invoice, copy at the bench'
w sales add "$reel" --id sa-4 --date 2025-09-20 --price '210.00 GBP' --included 'Skerry No. 40 in its box, with papers' --kind auction --with-premium --state '“little used, bright”' --originality 100 --box --source 'printed list of the autumn sale, Pell Street Rooms, lot 31'
w sales add "$reel" --id sa-5 --date 2026-02-14 --price '88.00 GBP' --included 'Skerry No. 40, reel only' --kind private --state '“worn, works, handle replaced”' --originality 85 --source 'told to the bench by the buyer; receipt seen'
w sales add "$reel" --id sa-6 --date 2026-05-01 --price '260.00 GBP' --included 'Skerry No. 40, reel only' --kind asking-price --state '“rare, as new”' --source 'a card in a shop window, Port Ellery' --not-used 'Asked, not paid.'
