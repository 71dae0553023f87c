CREATE TABLE `delivery_item` (
	`delivery_id` integer NOT NULL,
	`model_number` text NOT NULL,
	`count` integer NOT NULL,
	PRIMARY KEY(`delivery_id`, `model_number`),
	FOREIGN KEY (`delivery_id`) REFERENCES `delivery`(`id`) ON UPDATE no action ON DELETE cascade,
	FOREIGN KEY (`model_number`) REFERENCES `model`(`number`) ON UPDATE no action ON DELETE restrict,
	CONSTRAINT "delivery_item_count" CHECK(count > 0)
);
--> statement-breakpoint
CREATE TABLE `delivery_unit` (
	`delivery_id` integer NOT NULL,
	`booking_unit_id` integer NOT NULL,
	`case_label` text DEFAULT '' NOT NULL,
	`loaded_at` text NOT NULL,
	PRIMARY KEY(`delivery_id`, `booking_unit_id`),
	FOREIGN KEY (`delivery_id`) REFERENCES `delivery`(`id`) ON UPDATE no action ON DELETE cascade,
	FOREIGN KEY (`booking_unit_id`) REFERENCES `booking_unit`(`id`) ON UPDATE no action ON DELETE restrict
);
--> statement-breakpoint
CREATE INDEX `delivery_unit_by_unit` ON `delivery_unit` (`booking_unit_id`);--> statement-breakpoint
CREATE TABLE `delivery` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`booking_id` integer NOT NULL,
	`sequence` integer NOT NULL,
	`state` text DEFAULT 'loading' NOT NULL,
	`depot` text NOT NULL,
	`transport` text NOT NULL,
	`checks_json` text DEFAULT '[]' NOT NULL,
	`loaded_by` text DEFAULT '' NOT NULL,
	`vehicle` text DEFAULT '' NOT NULL,
	`instructed_by` text DEFAULT '' NOT NULL,
	`instruction_json` text DEFAULT '[]' NOT NULL,
	`handed_to` text DEFAULT '' NOT NULL,
	`signed_how` text DEFAULT '' NOT NULL,
	`signed_name` text DEFAULT '' NOT NULL,
	`signature_svg` text DEFAULT '' NOT NULL,
	`left_at` text,
	`despatch_xml` blob,
	`despatch_sha256` text DEFAULT '' NOT NULL,
	`opened_at` text NOT NULL,
	`who_id` text NOT NULL,
	`who` text NOT NULL,
	`taken_back_why` text DEFAULT '' NOT NULL,
	FOREIGN KEY (`booking_id`) REFERENCES `booking`(`id`) ON UPDATE no action ON DELETE restrict,
	CONSTRAINT "delivery_state" CHECK(state IN ('loading', 'left', 'taken back')),
	CONSTRAINT "delivery_left" CHECK(state = 'loading' OR left_at IS NOT NULL)
);
--> statement-breakpoint
CREATE UNIQUE INDEX `delivery_of_booking` ON `delivery` (`booking_id`,`sequence`);--> statement-breakpoint
CREATE TABLE `equipment_return` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`booking_id` integer NOT NULL,
	`sequence` integer NOT NULL,
	`depot` text NOT NULL,
	`arrived_on` text NOT NULL,
	`brought_by` text DEFAULT '' NOT NULL,
	`contamination` text NOT NULL,
	`contamination_note` text DEFAULT '' NOT NULL,
	`opened_at` text NOT NULL,
	`who_id` text NOT NULL,
	`who` text NOT NULL,
	FOREIGN KEY (`booking_id`) REFERENCES `booking`(`id`) ON UPDATE no action ON DELETE restrict,
	CONSTRAINT "equipment_return_product" CHECK(contamination <> 'product' OR contamination_note <> '')
);
--> statement-breakpoint
CREATE UNIQUE INDEX `equipment_return_of_booking` ON `equipment_return` (`booking_id`,`sequence`);--> statement-breakpoint
CREATE TABLE `return_count` (
	`return_id` integer NOT NULL,
	`model_number` text NOT NULL,
	`back` integer NOT NULL,
	`unused` integer DEFAULT 0 NOT NULL,
	`who_id` text NOT NULL,
	`who` text NOT NULL,
	`at` text NOT NULL,
	PRIMARY KEY(`return_id`, `model_number`),
	FOREIGN KEY (`return_id`) REFERENCES `equipment_return`(`id`) ON UPDATE no action ON DELETE restrict,
	FOREIGN KEY (`model_number`) REFERENCES `model`(`number`) ON UPDATE no action ON DELETE restrict,
	CONSTRAINT "return_count_counts" CHECK(back >= 0 AND unused >= 0 AND unused <= back)
);
--> statement-breakpoint
CREATE TABLE `return_decision` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`booking_id` integer NOT NULL,
	`charge` text NOT NULL,
	`decision` text NOT NULL,
	`proposed_minor` integer NOT NULL,
	`net_minor` integer NOT NULL,
	`reason` text DEFAULT '' NOT NULL,
	`at` text NOT NULL,
	`who_id` text NOT NULL,
	`who` text NOT NULL,
	`note_id` integer,
	FOREIGN KEY (`booking_id`) REFERENCES `booking`(`id`) ON UPDATE no action ON DELETE restrict,
	FOREIGN KEY (`note_id`) REFERENCES `return_note`(`id`) ON UPDATE no action ON DELETE restrict,
	CONSTRAINT "return_decision_reason" CHECK(decision = 'approved' OR reason <> '')
);
--> statement-breakpoint
CREATE UNIQUE INDEX `return_decision_once` ON `return_decision` (`booking_id`,`charge`) WHERE note_id IS NULL;--> statement-breakpoint
CREATE TABLE `return_note` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`number` text NOT NULL,
	`booking_id` integer NOT NULL,
	`frozen_json` text NOT NULL,
	`bytes` blob NOT NULL,
	`sha256` text NOT NULL,
	`currency` text NOT NULL,
	`gross_minor` integer NOT NULL,
	`issued_at` text NOT NULL,
	`who_id` text NOT NULL,
	`who` text NOT NULL,
	FOREIGN KEY (`booking_id`) REFERENCES `booking`(`id`) ON UPDATE no action ON DELETE restrict
);
--> statement-breakpoint
CREATE UNIQUE INDEX `return_note_number_unique` ON `return_note` (`number`);--> statement-breakpoint
CREATE INDEX `return_note_by_booking` ON `return_note` (`booking_id`);--> statement-breakpoint
CREATE TABLE `return_photo` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`piece_id` integer NOT NULL,
	`file_name` text NOT NULL,
	`mime` text NOT NULL,
	`size_bytes` integer NOT NULL,
	`sha256` text NOT NULL,
	`bytes` blob NOT NULL,
	`added_at` text NOT NULL,
	`who_id` text NOT NULL,
	`who` text NOT NULL,
	`removed_at` text,
	FOREIGN KEY (`piece_id`) REFERENCES `return_piece`(`id`) ON UPDATE no action ON DELETE restrict
);
--> statement-breakpoint
CREATE INDEX `return_photo_by_piece` ON `return_photo` (`piece_id`);--> statement-breakpoint
CREATE TABLE `return_piece` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`return_id` integer NOT NULL,
	`booking_unit_id` integer NOT NULL,
	`condition` text NOT NULL,
	`run_hours` real,
	`missing_parts` text DEFAULT '' NOT NULL,
	`note` text DEFAULT '' NOT NULL,
	`saw_overload` integer DEFAULT false NOT NULL,
	`repair_hours` real DEFAULT 0 NOT NULL,
	`repair_parts_minor` integer DEFAULT 0 NOT NULL,
	`cause` text DEFAULT 'not known' NOT NULL,
	`cause_words` text DEFAULT '' NOT NULL,
	`before_json` text NOT NULL,
	`checked_at` text NOT NULL,
	`who_id` text NOT NULL,
	`who` text NOT NULL,
	`undone_at` text,
	`undone_why` text DEFAULT '' NOT NULL,
	`note_id` integer,
	FOREIGN KEY (`return_id`) REFERENCES `equipment_return`(`id`) ON UPDATE no action ON DELETE restrict,
	FOREIGN KEY (`booking_unit_id`) REFERENCES `booking_unit`(`id`) ON UPDATE no action ON DELETE restrict,
	FOREIGN KEY (`note_id`) REFERENCES `return_note`(`id`) ON UPDATE no action ON DELETE restrict,
	CONSTRAINT "return_piece_run_hours" CHECK(run_hours IS NULL OR run_hours >= 0)
);
--> statement-breakpoint
CREATE INDEX `return_piece_by_return` ON `return_piece` (`return_id`);--> statement-breakpoint
CREATE UNIQUE INDEX `return_piece_once` ON `return_piece` (`booking_unit_id`) WHERE undone_at IS NULL AND condition <> 'missing';--> statement-breakpoint
CREATE TABLE `work_order` (
	`id` integer PRIMARY KEY AUTOINCREMENT NOT NULL,
	`number` text NOT NULL,
	`unit_serial` text NOT NULL,
	`kind` text NOT NULL,
	`reason` text NOT NULL,
	`piece_id` integer,
	`state` text DEFAULT 'open' NOT NULL,
	`opened_at` text NOT NULL,
	`opened_by` text NOT NULL,
	`begun_at` text,
	`begun_by` text DEFAULT '' NOT NULL,
	`ended_at` text,
	`ended_by` text DEFAULT '' NOT NULL,
	`result` text DEFAULT '' NOT NULL,
	`done` text DEFAULT '' NOT NULL,
	`hours` real DEFAULT 0 NOT NULL,
	`parts_minor` integer DEFAULT 0 NOT NULL,
	FOREIGN KEY (`unit_serial`) REFERENCES `unit`(`serial`) ON UPDATE no action ON DELETE restrict,
	FOREIGN KEY (`piece_id`) REFERENCES `return_piece`(`id`) ON UPDATE no action ON DELETE restrict,
	CONSTRAINT "work_order_state" CHECK(state IN ('open', 'doing', 'done', 'withdrawn')),
	CONSTRAINT "work_order_ended" CHECK((state IN ('done', 'withdrawn')) = (ended_at IS NOT NULL))
);
--> statement-breakpoint
CREATE UNIQUE INDEX `work_order_number_unique` ON `work_order` (`number`);--> statement-breakpoint
CREATE INDEX `work_order_by_unit` ON `work_order` (`unit_serial`);--> statement-breakpoint
CREATE INDEX `work_order_by_state` ON `work_order` (`state`,`id`);