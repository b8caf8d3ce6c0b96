//! The kinds of event. They stand in one list because whoever reads events picks from all of them.

use std::sync::Arc;

use tenter_chemistry::reaction::BottleState;
use tenter_quantity::{Figure, Interval, Place};
use tenter_resolve::recipe::{Cover, GoodsId, LayoutId, MaterialId, MixId, Named, VesselId};

use crate::state::{GoodsState, LiquorName, LiquorState, ZoneKey, ZoneState};

/// Kinds of event. Masses kg, volumes m³, temperatures K, times s, amounts of substance mol; all goods of the step
/// together unless a zone is named.
#[derive(Clone, Debug)]
pub enum EventKind {
    /// Equipment put on; worn from here to the end.
    Worn {
        /// What, as written.
        what: Named,
    },
    /// Dry powder of a dusty material handled: weighed, strewn, stirred.
    PowderHandled {
        /// Which.
        material: MaterialId,
        /// The amount line, or the step.
        at: Place,
        /// How much, if known.
        mass: Option<Figure>,
        /// A dust mask or respirator is on.
        respirator: bool,
        /// Gloves are on.
        gloves: bool,
        /// Goggles or other eye protection is on.
        eyes: bool,
    },
    /// A mix made.
    Made {
        /// Index of the liquor in the frame.
        liquor: usize,
        /// Which mix.
        mix: MixId,
        /// No step says `make`: taken as made just before first use.
        implied: bool,
        /// Clock when made.
        at: Interval,
    },
    /// Materials brought together: in a mix, a bath, a paste, on the goods.
    Mixed {
        /// Where: a mix, vessel, bath, or `None` on the goods.
        liquor: Option<LiquorName>,
        /// What was there already, kg.
        had: Vec<(MaterialId, Interval)>,
        /// What came to it, kg.
        came: Vec<(MaterialId, Interval)>,
        /// The vessel it stands in, if said.
        vessel: Option<VesselId>,
    },
    /// Something drawn from a mix.
    Drawn {
        /// Which.
        mix: MixId,
        /// Age of the mix at this moment, s.
        age: Figure,
        /// Time since alkali and reactive dye came together in it, s; `None` if not both are in it.
        alkali_with_dye: Option<Interval>,
        /// Asked for, m³ (kg of a dry blend); `None`: all there is, or used as a bath.
        wanted: Option<Figure>,
        /// There was, m³ (kg of a dry blend).
        there: Option<Figure>,
        /// Temperature of it, K.
        temperature: Figure,
        /// With alkali in it: how it must be taken, at worst, most likely, at best.
        state: Option<(BottleState, BottleState, BottleState)>,
        /// Dye without alkali: how long such a stock keeps at its temperature, s.
        keeps: Option<Interval>,
    },
    /// Goods took up liquor in a bath and were taken out.
    SoakUptake {
        /// The mix, if the bath is one.
        mix: Option<MixId>,
        /// Index of the liquor in the frame.
        liquor: usize,
        /// The goods.
        goods: GoodsId,
        /// The lot.
        lot: Option<u32>,
        /// How many earlier times goods were taken through this bath.
        earlier_uses: u32,
        /// Water the goods brought in, kg.
        water_before: Figure,
        /// Alkali of the bath as made, g/L as soda ash (kg/m³); `None` without alkali.
        strength_nominal: Option<Figure>,
        /// Alkali of the liquor they carry off, kg/m³ as soda ash.
        strength_actual: Option<Figure>,
        /// Liquor carried off, kg of water.
        carried: Figure,
        /// Bath there was, m³.
        bath: Option<Figure>,
        /// Bath left over, m³.
        left: Option<Figure>,
        /// How far it went through, share of full wetting.
        wetted: Interval,
        /// How long, s.
        time: Figure,
        /// How long full wetting takes (two thirds of what is unwetted), s.
        wetting_time: Interval,
        /// The bath's temperature, K.
        temperature: Figure,
    },
    /// Goods put into a bath.
    Immersed {
        /// Index of the liquor in the frame.
        liquor: usize,
        /// The goods.
        goods: GoodsId,
        /// Liquor in m³, goods' own water included.
        volume: Option<Figure>,
        /// Litres of liquor to a kilogram of dry goods in it.
        liquor_ratio: Option<Figure>,
        /// Volume that bath and goods fill, m³ (dry goods taken as 1 L/kg).
        fills: Option<Figure>,
        /// The vessel, if said.
        vessel: Option<VesselId>,
        /// Salt strength, kg/m³.
        salt: Interval,
        /// Temperature, K.
        temperature: Figure,
        /// Dye in the bath, kg.
        dye: Interval,
    },
    /// Something added to a bath.
    Added {
        /// Index of the liquor in the frame.
        liquor: usize,
        /// What.
        material: MaterialId,
        /// How much, kg.
        mass: Figure,
        /// In how many portions.
        portions: u32,
        /// Whether goods are in the bath.
        goods_inside: bool,
        /// Dye in the bath, kg.
        dye_in_bath: Interval,
        /// How long goods have been in a bath that holds dye, s.
        levelling_time: Option<Interval>,
        /// Temperature of the bath, K.
        temperature: Figure,
    },
    /// Dye laid on a zone (or into a bath: `zone` of the whole goods).
    DyeLaid {
        /// The goods.
        goods: GoodsId,
        /// The lot.
        lot: Option<u32>,
        /// The zone.
        zone: ZoneKey,
        /// The dye.
        dye: MaterialId,
        /// How much, kg.
        mass: Figure,
        /// As dry powder.
        dry: bool,
        /// On ice.
        ice: bool,
    },
    /// Dry powder that is not dye laid on a zone.
    PowderLaid {
        /// The goods.
        goods: GoodsId,
        /// The zone.
        zone: ZoneKey,
        /// What.
        material: MaterialId,
        /// How much, kg.
        mass: Figure,
        /// Water the zone held, kg/kg dry.
        water_ratio: Interval,
        /// On ice.
        ice: bool,
        /// Dye powder lies there already.
        with_dye_powder: bool,
    },
    /// Dye on a zone gets wet, or a wet dyed zone gets liquor: what meets there. Emitted for each zone with dye at each
    /// step that brings liquor, and at the first step that lets the dye react.
    WettingOut {
        /// The goods.
        goods: GoodsId,
        /// The lot.
        lot: Option<u32>,
        /// The zone with what it holds then: water, alkali, dye, temperature; pH on demand.
        zone: Arc<ZoneState>,
        /// Usable alkali, mol.
        usable: Interval,
        /// The same as kg of soda ash; `None` where there is none.
        alkali: Option<Figure>,
        /// Dye, kg.
        dye: Figure,
        /// Alkali the acids there take up, mol.
        acid: Interval,
        /// Dry dye was wetted here.
        powder: bool,
        /// The water comes little by little (melting ice), so it never dilutes all at once.
        gradual: bool,
    },
    /// Liquor poured, squirted or melted on to goods.
    LiquorLaid {
        /// The goods.
        goods: GoodsId,
        /// The zone.
        zone: ZoneKey,
        /// From which mix.
        mix: Option<MixId>,
        /// How much, kg of water.
        water: Figure,
        /// What the zone held before, kg/kg dry.
        before: Interval,
        /// What it can hold, kg/kg dry.
        capacity: Interval,
        /// Temperature of the liquor as it arrives, K.
        temperature: Figure,
        /// How warm the zone becomes, K.
        becomes: Figure,
        /// Dry weight of the zone, kg.
        dry: Figure,
    },
    /// More liquor on a zone than it can hold.
    Overflow {
        /// The goods.
        goods: GoodsId,
        /// The zone.
        zone: ZoneKey,
        /// Water that came, with what was held, kg.
        held: Figure,
        /// What the zone can hold, kg.
        capacity: Figure,
        /// What runs off, kg of water.
        runs_off: Figure,
        /// Dye it carries, kg.
        dye: Interval,
        /// To the other face of the same zone rather than away.
        through: bool,
    },
    /// A zone heated by hot liquor, steam or an iron while dye is on it.
    Heated {
        /// The goods.
        goods: GoodsId,
        /// The zone.
        zone: ZoneKey,
        /// How warm, K.
        temperature: Figure,
        /// Covered against drying.
        cover: Option<Cover>,
        /// Wet (above a fifth of its weight).
        wet: bool,
        /// Steamed or microwaved, not only warmed.
        steam: bool,
    },
    /// A bath or a mix heated or cooled.
    BathTemperature {
        /// Index of the liquor in the frame.
        liquor: usize,
        /// From, K.
        from: Figure,
        /// To, K.
        to: Figure,
        /// In, s.
        over: Interval,
        /// Goods in it.
        goods_inside: bool,
    },
    /// Goods left to react.
    Batch {
        /// The goods.
        goods: GoodsId,
        /// The lot.
        lot: Option<u32>,
        /// How long, s.
        time: Figure,
        /// Of the surroundings, K.
        surroundings: Figure,
        /// How warm the goods were at the start, K (the zone with most dye).
        from: Figure,
        /// How they were covered.
        cover: Option<Cover>,
        /// Water held at the start, kg/kg dry.
        water_before: Interval,
        /// And at the end.
        water_after: Interval,
        /// Any dye on them.
        dye: bool,
        /// Any usable alkali on them.
        alkali: bool,
    },
    /// Goods rinsed or washed; one event each fresh liquor.
    Rinse {
        /// The goods.
        goods: GoodsId,
        /// The lot.
        lot: Option<u32>,
        /// First since dye was laid.
        first: bool,
        /// With soap or detergent.
        soap: bool,
        /// Of the water, K.
        temperature: Figure,
        /// Usable alkali in the goods before, kg as soda ash.
        alkali_before: Interval,
        /// Share left after it of everything not fixed.
        left: Figure,
        /// Share of the loose left before it.
        loose_before: Interval,
        /// Soapings done with this one.
        soapings: u32,
        /// Dye was on the goods.
        dye: bool,
        /// The goods as they were before it.
        before: Arc<GoodsState>,
    },
    /// Goods brought to a pickup.
    Wrung {
        /// The goods.
        goods: GoodsId,
        /// Water held before, kg/kg dry.
        before: Interval,
        /// And after.
        after: Figure,
    },
    /// Goods dried.
    Dried {
        /// The goods.
        goods: GoodsId,
        /// Dye on them that was never washed off.
        unwashed_dye: bool,
        /// Usable alkali left in them, kg as soda ash.
        alkali: Interval,
    },
    /// Folded or bound.
    Shaped {
        /// The goods.
        goods: GoodsId,
        /// As.
        layout: Option<LayoutId>,
        /// Bound tight.
        bound: bool,
        /// Water held, kg/kg dry.
        water_ratio: Interval,
    },
    /// Ice heaped.
    Iced {
        /// The goods.
        goods: GoodsId,
        /// How much, kg.
        mass: Figure,
        /// Time to melt in the room, s.
        melts_in: Interval,
        /// Below the goods.
        under: bool,
    },
    /// A liquor poured away.
    Discharged {
        /// Index of the liquor in the frame before it goes.
        liquor: usize,
        /// How much, m³.
        volume: Option<Figure>,
        /// As it was, for its pH and what is in it.
        contents: Arc<LiquorState>,
    },
    /// A step that changes nothing the account knows of.
    NoEffect {
        /// Why.
        why: &'static str,
    },
}
