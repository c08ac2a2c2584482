// L networks of all forms, computed. Each feed lacks one part; what the source sees says which part that must be,
// beside the other part's exact value.
#include "reference.hpp"

namespace wattfall::reference {

Setups l_networks_computed() {
  return {
      {"25-j60 ohm to 50 ohm at 3.6 MHz, shunt at load; the series part is missing",
       "3.6 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "inductor Lp at desk : 8.7153354312115185e-6 H\n"
       "load ant at desk : 25-j60 ohm\n",
       {exactly("LN-047", missing_series_henries, 3.4101706614816739, micro)}},
      {"25-j60 ohm to 50 ohm at 3.6 MHz, shunt at load; the shunt part is missing",
       "3.6 MHz",
       "source rig at feed : 100 W, 50 ohm\n"
       "load ant at feed : 25-j60 ohm\n"
       "inductor Ls from feed to desk : 3.4101706614816739e-6 H\n"
       "resistor rig_side at desk : 50 ohm\n",
       {exactly("LN-048", missing_shunt_henries, 8.7153354312115185, micro)}},
      {"25-j60 ohm to 50 ohm at 3.6 MHz, shunt at load; the series part is missing",
       "3.6 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "inductor Lp at desk : 1.8949941082481706e-6 H\n"
       "load ant at desk : 25-j60 ohm\n",
       {exactly("LN-051", missing_series_farads, 573.137926299441, pico)}},
      {"25-j60 ohm to 50 ohm at 3.6 MHz, shunt at load; the shunt part is missing",
       "3.6 MHz",
       "source rig at feed : 100 W, 50 ohm\n"
       "load ant at feed : 25-j60 ohm\n"
       "capacitor Cs from feed to desk : 5.73137926299441e-10 F\n"
       "resistor rig_side at desk : 50 ohm\n",
       {exactly("LN-050", missing_shunt_siemens, -23.329732911563025, milli),
        exactly("LN-052", missing_shunt_henries, 1.8949941082481706, micro)}},
      {"25-j60 ohm to 50 ohm at 3.6 MHz, series at load; the series part is missing",
       "3.6 MHz",
       "source rig at (feed desk) : 100 W, 50 ohm\n"
       "load ant at feed : 25-j60 ohm\n"
       "capacitor Cp at desk : 8.8419412828830742e-10 F\n"
       "resistor rig_side at desk : 50 ohm\n",
       {exactly("LN-053", missing_series_ohms, 85.0, one),
        exactly("LN-055", missing_series_henries, 3.7578250452253065, micro)}},
      {"25-j60 ohm to 50 ohm at 3.6 MHz, series at load; the shunt part is missing",
       "3.6 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "inductor Ls from desk to feed : 3.7578250452253065e-6 H\n"
       "load ant at feed : 25-j60 ohm\n",
       {exactly("LN-054", missing_shunt_siemens, 20.0, milli),
        exactly("LN-056", missing_shunt_farads, 884.19412828830742, pico)}},
      {"25-j60 ohm to 50 ohm at 3.6 MHz, series at load; the series part is missing",
       "3.6 MHz",
       "source rig at (feed desk) : 100 W, 50 ohm\n"
       "load ant at feed : 25-j60 ohm\n"
       "inductor Lp at desk : 2.2104853207207686e-6 H\n"
       "resistor rig_side at desk : 50 ohm\n",
       {exactly("LN-057", missing_series_ohms, 35.0, one),
        exactly("LN-059", missing_series_henries, 1.547339724504538, micro)}},
      {"25-j60 ohm to 50 ohm at 3.6 MHz, series at load; the shunt part is missing",
       "3.6 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "inductor Ls from desk to feed : 1.547339724504538e-6 H\n"
       "load ant at feed : 25-j60 ohm\n",
       {exactly("LN-058", missing_shunt_siemens, -20.0, milli),
        exactly("LN-060", missing_shunt_henries, 2.2104853207207686, micro)}},
      {"10 ohm to 50 ohm at 7.1 MHz, series at load; the series part is missing",
       "7.1 MHz",
       "source rig at (feed desk) : 100 W, 50 ohm\n"
       "load ant at feed : 10 ohm\n"
       "capacitor Cp at desk : 8.966475667149033e-10 F\n"
       "resistor rig_side at desk : 50 ohm\n",
       {exactly("LN-061", missing_series_ohms, 20.0, one),
        exactly("LN-063", missing_series_henries, 0.44832378335745165, micro)}},
      {"10 ohm to 50 ohm at 7.1 MHz, series at load; the shunt part is missing",
       "7.1 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "inductor Ls from desk to feed : 4.4832378335745165e-7 H\n"
       "load ant at feed : 10 ohm\n",
       {exactly("LN-062", missing_shunt_siemens, 40.0, milli),
        exactly("LN-064", missing_shunt_farads, 896.6475667149033, pico)}},
      {"10 ohm to 50 ohm at 7.1 MHz, series at load; the shunt part is missing",
       "7.1 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "capacitor Cs from desk to feed : 1.1208094583936291e-9 F\n"
       "load ant at feed : 10 ohm\n",
       {exactly("LN-068", missing_shunt_henries, 0.56040472919681456, micro)}},
      {"200 ohm to 50 ohm at 14.2 MHz, shunt at load; the series part is missing",
       "14.2 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "capacitor Cp at desk : 9.7064946377076065e-11 F\n"
       "load ant at desk : 200 ohm\n",
       {exactly("LN-069", missing_series_ohms, 86.602540378443865, one),
        exactly("LN-071", missing_series_henries, 0.97064946377076065, micro)}},
      {"200 ohm to 50 ohm at 14.2 MHz, shunt at load; the shunt part is missing",
       "14.2 MHz",
       "source rig at feed : 100 W, 50 ohm\n"
       "load ant at feed : 200 ohm\n"
       "inductor Ls from feed to desk : 9.7064946377076065e-7 H\n"
       "resistor rig_side at desk : 50 ohm\n",
       {exactly("LN-070", missing_shunt_siemens, 8.6602540378443865, milli),
        exactly("LN-072", missing_shunt_farads, 97.064946377076065, pico)}},
      {"200 ohm to 50 ohm at 14.2 MHz, shunt at load; the series part is missing",
       "14.2 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "inductor Lp at desk : 1.2941992850276809e-6 H\n"
       "load ant at desk : 200 ohm\n",
       {exactly("LN-073", missing_series_ohms, -86.602540378443865, one),
        exactly("LN-075", missing_series_farads, 129.41992850276809, pico)}},
      {"200 ohm to 50 ohm at 14.2 MHz, shunt at load; the shunt part is missing",
       "14.2 MHz",
       "source rig at feed : 100 W, 50 ohm\n"
       "load ant at feed : 200 ohm\n"
       "capacitor Cs from feed to desk : 1.2941992850276809e-10 F\n"
       "resistor rig_side at desk : 50 ohm\n",
       {exactly("LN-074", missing_shunt_siemens, -8.6602540378443865, milli),
        exactly("LN-076", missing_shunt_henries, 1.2941992850276809, micro)}},
      {"1000-j500 ohm to 50 ohm at 7.1 MHz, shunt at load; the series part is missing",
       "7.1 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "capacitor Cp at desk : 7.8886685035237007e-11 F\n"
       "load ant at desk : 1000-j500 ohm\n",
       {exactly("LN-077", missing_series_ohms, 244.94897427831781, one),
        exactly("LN-079", missing_series_henries, 5.4908225438991275, micro)}},
      {"1000-j500 ohm to 50 ohm at 7.1 MHz, shunt at load; the shunt part is missing",
       "7.1 MHz",
       "source rig at feed : 100 W, 50 ohm\n"
       "load ant at feed : 1000-j500 ohm\n"
       "inductor Ls from feed to desk : 5.4908225438991275e-6 H\n"
       "resistor rig_side at desk : 50 ohm\n",
       {exactly("LN-080", missing_shunt_farads, 78.886685035237007, pico)}},
      {"1000-j500 ohm to 50 ohm at 7.1 MHz, shunt at load; the shunt part is missing",
       "7.1 MHz",
       "source rig at feed : 100 W, 50 ohm\n"
       "load ant at feed : 1000-j500 ohm\n"
       "capacitor Cs from feed to desk : 9.1513709064985459e-11 F\n"
       "resistor rig_side at desk : 50 ohm\n",
       {exactly("LN-082", missing_shunt_siemens, -4.319183588453085, milli),
        exactly("LN-084", missing_shunt_henries, 5.1899134891603294, micro)}},
      {"5-j400 ohm to 50 ohm at 1.85 MHz, shunt at load; the series part is missing",
       "1.85 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "inductor Lp at desk : 5.0318019223872256e-5 H\n"
       "load ant at desk : 5-j400 ohm\n",
       {exactly("LN-087", missing_series_henries, 108.74337714048201, micro)}},
      {"5-j400 ohm to 50 ohm at 1.85 MHz, shunt at load; the shunt part is missing",
       "1.85 MHz",
       "source rig at feed : 100 W, 50 ohm\n"
       "load ant at feed : 5-j400 ohm\n"
       "inductor Ls from feed to desk : 0.00010874337714048201 H\n"
       "resistor rig_side at desk : 50 ohm\n",
       {exactly("LN-086", missing_shunt_siemens, -1.7097195059653145, milli)}},
      {"5-j400 ohm to 50 ohm at 1.85 MHz, shunt at load; the series part is missing",
       "1.85 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "inductor Lp at desk : 2.6152824303765143e-5 H\n"
       "load ant at desk : 5-j400 ohm\n",
       {exactly("LN-089", missing_series_ohms, -1264.0213605790054, one)}},
      {"5-j400 ohm to 50 ohm at 1.85 MHz, shunt at load; the shunt part is missing",
       "1.85 MHz",
       "source rig at feed : 100 W, 50 ohm\n"
       "load ant at feed : 5-j400 ohm\n"
       "capacitor Cs from feed to desk : 6.8060320538558605e-11 F\n"
       "resistor rig_side at desk : 50 ohm\n",
       {exactly("LN-090", missing_shunt_siemens, -3.2894993660859275, milli),
        exactly("LN-092", missing_shunt_henries, 26.152824303765143, micro)}},
      {"5-j400 ohm to 50 ohm at 1.85 MHz, series at load; the series part is missing",
       "1.85 MHz",
       "source rig at (feed desk) : 100 W, 50 ohm\n"
       "load ant at feed : 5-j400 ohm\n"
       "capacitor Cp at desk : 5.1617819381155244e-9 F\n"
       "resistor rig_side at desk : 50 ohm\n",
       {exactly("LN-093", missing_series_ohms, 415.0, one),
        exactly("LN-095", missing_series_henries, 35.70232507196571, micro)}},
      {"5-j400 ohm to 50 ohm at 1.85 MHz, series at load; the shunt part is missing",
       "1.85 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "inductor Ls from desk to feed : 3.570232507196571e-5 H\n"
       "load ant at feed : 5-j400 ohm\n",
       {exactly("LN-096", missing_shunt_farads, 5161.7819381155244, pico)}},
      {"5-j400 ohm to 50 ohm at 1.85 MHz, series at load; the series part is missing",
       "1.85 MHz",
       "source rig at (feed desk) : 100 W, 50 ohm\n"
       "load ant at feed : 5-j400 ohm\n"
       "inductor Lp at desk : 1.4338283161432012e-6 H\n"
       "resistor rig_side at desk : 50 ohm\n",
       {exactly("LN-099", missing_series_henries, 33.121434102907948, micro)}},
      {"5-j400 ohm to 50 ohm at 1.85 MHz, series at load; the shunt part is missing",
       "1.85 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "inductor Ls from desk to feed : 3.3121434102907948e-5 H\n"
       "load ant at feed : 5-j400 ohm\n",
       {exactly("LN-098", missing_shunt_siemens, -60.0, milli),
        exactly("LN-100", missing_shunt_henries, 1.4338283161432012, micro)}},
      {"36.5+j15 ohm to 50 ohm at 3.75 MHz, series at load; the series part is missing",
       "3.75 MHz",
       "source rig at (feed desk) : 100 W, 50 ohm\n"
       "load ant at feed : 36.5+j15 ohm\n"
       "capacitor Cp at desk : 5.162253312203363e-10 F\n"
       "resistor rig_side at desk : 50 ohm\n",
       {exactly("LN-101", missing_series_ohms, 7.1979728804231131, one),
        exactly("LN-103", missing_series_henries, 0.3054914571095324, micro)}},
      {"36.5+j15 ohm to 50 ohm at 3.75 MHz, series at load; the shunt part is missing",
       "3.75 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "inductor Ls from desk to feed : 3.054914571095324e-7 H\n"
       "load ant at feed : 36.5+j15 ohm\n",
       {exactly("LN-104", missing_shunt_farads, 516.2253312203363, pico)}},
      {"36.5+j15 ohm to 50 ohm at 3.75 MHz, series at load; the series part is missing",
       "3.75 MHz",
       "source rig at (feed desk) : 100 W, 50 ohm\n"
       "load ant at feed : 36.5+j15 ohm\n"
       "inductor Lp at desk : 3.4893008499152361e-6 H\n"
       "resistor rig_side at desk : 50 ohm\n",
       {exactly("LN-105", missing_series_ohms, -37.197972880423113, one)}},
      {"36.5+j15 ohm to 50 ohm at 3.75 MHz, series at load; the shunt part is missing",
       "3.75 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "capacitor Cs from desk to feed : 1.1409578230047896e-9 F\n"
       "load ant at feed : 36.5+j15 ohm\n",
       {exactly("LN-108", missing_shunt_henries, 3.4893008499152361, micro)}},
      {"300+j800 ohm to 50 ohm at 21.2 MHz, shunt at load; the series part is missing",
       "21.2 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "capacitor Cp at desk : 2.952770023303889e-11 F\n"
       "load ant at desk : 300+j800 ohm\n",
       {exactly("LN-111", missing_series_henries, 2.5915623768317107, micro)}},
      {"300+j800 ohm to 50 ohm at 21.2 MHz, shunt at load; the shunt part is missing",
       "21.2 MHz",
       "source rig at feed : 100 W, 50 ohm\n"
       "load ant at feed : 300+j800 ohm\n"
       "inductor Ls from feed to desk : 2.5915623768317107e-6 H\n"
       "resistor rig_side at desk : 50 ohm\n",
       {exactly("LN-110", missing_shunt_siemens, 3.933193859891504, milli)}},
      {"300+j800 ohm to 50 ohm at 21.2 MHz, shunt at load; the series part is missing",
       "21.2 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "inductor Lp at desk : 4.311044234023678e-6 H\n"
       "load ant at desk : 300+j800 ohm\n",
       {exactly("LN-115", missing_series_farads, 21.747376588797572, pico)}},
      {"300+j800 ohm to 50 ohm at 21.2 MHz, shunt at load; the shunt part is missing",
       "21.2 MHz",
       "source rig at feed : 100 W, 50 ohm\n"
       "load ant at feed : 300+j800 ohm\n"
       "capacitor Cs from feed to desk : 2.1747376588797572e-11 F\n"
       "resistor rig_side at desk : 50 ohm\n",
       {exactly("LN-114", missing_shunt_siemens, -1.7414130379736958, milli),
        exactly("LN-116", missing_shunt_henries, 4.311044234023678, micro)}},
      {"50+j120 ohm to 50 ohm at 28.5 MHz, shunt at load; the series part is missing",
       "28.5 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "capacitor Cp at desk : 7.9304861085964664e-11 F\n"
       "load ant at desk : 50+j120 ohm\n",
       {exactly("LN-119", missing_series_henries, 0.67012607617640141, micro)}},
      {"50+j120 ohm to 50 ohm at 28.5 MHz, shunt at load; the shunt part is missing",
       "28.5 MHz",
       "source rig at feed : 100 W, 50 ohm\n"
       "load ant at feed : 50+j120 ohm\n"
       "inductor Ls from feed to desk : 6.7012607617640141e-7 H\n"
       "resistor rig_side at desk : 50 ohm\n",
       {exactly("LN-118", missing_shunt_siemens, 14.201183431952663, milli),
        exactly("LN-120", missing_shunt_farads, 79.304861085964664, pico)}},
      {"50+j120 ohm to 50 ohm at 28.5 MHz, shunt at load; the series part is missing",
       "28.5 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "load ant at desk : 50+j120 ohm\n",
       {exactly("LN-121", missing_series_ohms, -120.0, one),
        exactly("LN-123", missing_series_farads, 46.536533067805654, pico)}},
      {"50+j120 ohm to 50 ohm at 28.5 MHz, shunt at load; no shunt part is needed",
       "28.5 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "capacitor Cs from desk to feed : 4.6536533067805654e-11 F\n"
       "load ant at feed : 50+j120 ohm\n",
       {exactly_within("LN-122", missing_shunt_siemens, 0.0, milli, 1.0e-12)}},
      {"50+j120 ohm to 50 ohm at 28.5 MHz, series at load; the series part is missing",
       "28.5 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "load ant at desk : 50+j120 ohm\n",
       {exactly("LN-124", missing_series_ohms, -120.0, one),
        exactly("LN-126", missing_series_farads, 46.536533067805654, pico)}},
      {"50+j120 ohm to 50 ohm at 28.5 MHz, series at load; no shunt part is needed",
       "28.5 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "capacitor Cs from desk to feed : 4.6536533067805654e-11 F\n"
       "load ant at feed : 50+j120 ohm\n",
       {exactly_within("LN-125", missing_shunt_siemens, 0.0, milli, 1.0e-12)}},
      {"50+j120 ohm to 50 ohm at 28.5 MHz, series at load; the series part is missing",
       "28.5 MHz",
       "source rig at desk : 100 W, 50 ohm\n"
       "load ant at desk : 50+j120 ohm\n",
       {exactly("LN-129", missing_series_farads, 46.536533067805654, pico)}},
  };
}

}  // namespace wattfall::reference
